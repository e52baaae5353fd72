// TEMPORARY stand-in (not committed), conjugate gradients; to be replaced by the real one.
import type { Mesh } from "./mesh.ts";
export function lscm(mesh: Mesh): Float64Array {
  const p = mesh.positions, t = mesh.triangles, n = p.length / 3, F = t.length / 3;
  let a0 = 0, b0 = 0, far = -1;
  // pins: farthest pair roughly
  const dist = (i: number, j: number) => (p[3*i]!-p[3*j]!)**2+(p[3*i+1]!-p[3*j+1]!)**2+(p[3*i+2]!-p[3*j+2]!)**2;
  for (let r = 0; r < 3; r++) { far = -1; for (let i = 0; i < n; i++) { const d = dist(a0, i); if (d > far) { far = d; b0 = i; } } const s = a0; a0 = b0; b0 = s; }
  const rows: number[] = new Array(F * 12);
  for (let f = 0; f < F; f++) {
    const [i, j, k] = [t[3*f]!, t[3*f+1]!, t[3*f+2]!];
    const ux = p[3*j]!-p[3*i]!, uy = p[3*j+1]!-p[3*i+1]!, uz = p[3*j+2]!-p[3*i+2]!;
    const vx = p[3*k]!-p[3*i]!, vy = p[3*k+1]!-p[3*i+1]!, vz = p[3*k+2]!-p[3*i+2]!;
    const l = Math.sqrt(ux*ux+uy*uy+uz*uz); const x1 = l; const x2 = (ux*vx+uy*vy+uz*vz)/l;
    const y2 = Math.sqrt(Math.max(1e-18, vx*vx+vy*vy+vz*vz-x2*x2)); const s = 1/Math.sqrt(x1*y2);
    // W_i = (p_k - p_j), etc as complex
    const wi = [(x2-x1)*s, y2*s], wj = [(-x2)*s, -y2*s], wk = [x1*s, 0];
    rows.splice(0,0); const o = f*12; const put=(q:number,v:number,w:number[])=>{rows[o+q]=v;rows[o+q+1]=w[0]!;rows[o+q+2]=w[1]!;}; put(0,i,wi);put(3,j,wj);put(6,k,wk);
  }
  const N = 2*n; const x = new Float64Array(N); x[2*b0] = Math.sqrt(dist(a0,b0));
  const fixed = new Uint8Array(N); fixed[2*a0]=fixed[2*a0+1]=fixed[2*b0]=fixed[2*b0+1]=1;
  const mul = (x: Float64Array, out: Float64Array) => { out.fill(0); for (let f=0;f<F;f++){ let re=0, im=0; const o=f*12; for(let q=0;q<9;q+=3){const v=rows[o+q]!,wr=rows[o+q+1]!,wi=rows[o+q+2]!; re+=wr*x[2*v]!-wi*x[2*v+1]!; im+=wr*x[2*v+1]!+wi*x[2*v]!;} for(let q=0;q<9;q+=3){const v=rows[o+q]!,wr=rows[o+q+1]!,wi=rows[o+q+2]!; out[2*v]!+=wr*re+wi*im; out[2*v+1]!+=-wi*re+wr*im;} } };
  const Ax = new Float64Array(N), r = new Float64Array(N), d = new Float64Array(N), D = new Float64Array(N);
  for (let f=0;f<F;f++){const o=f*12; for(let q=0;q<9;q+=3){const v=rows[o+q]!; const w=rows[o+q+1]!**2+rows[o+q+2]!**2; D[2*v]!+=w;D[2*v+1]!+=w;}}
  mul(x, Ax); for (let i=0;i<N;i++) r[i]=fixed[i]?0:-Ax[i]!; 
  const z=new Float64Array(N); let rz=0; for(let i=0;i<N;i++){z[i]=r[i]!/D[i]!; d[i]=z[i]!; rz+=r[i]!*z[i]!;}
  const rz0=rz; for (let it=0; it<20000 && rz>1e-22*rz0; it++){ mul(d,Ax); for(let i=0;i<N;i++) if(fixed[i]) Ax[i]=0; let dA=0; for(let i=0;i<N;i++) dA+=d[i]!*Ax[i]!; const a=rz/dA; for(let i=0;i<N;i++){x[i]!+=a*d[i]!; r[i]!-=a*Ax[i]!;} let n2=0; for(let i=0;i<N;i++){z[i]=r[i]!/D[i]!; n2+=r[i]!*z[i]!;} const b=n2/rz; rz=n2; for(let i=0;i<N;i++) d[i]=z[i]!+b*d[i]!; }
  return x;
}
