import { sentence } from "../sentence.ts";

export const jobSentences = {
  "job-unreadable": sentence("stop", (d: { file: string; why: string }) => `${d.file} cannot be read as a job: ${d.why}.`),

  "job-newer": sentence("stop", (d: { file: string; version: number }) => `${d.file} was saved by a newer Lastwise (form ${d.version}). Update Lastwise and open it again; the file is left as it is.`),
  "job-field-wrong": sentence("stop", (d: { file: string; field: string; why: string }) => `${d.file}: the field ${d.field} ${d.why}. Correct it and open the file again.`),
  "job-older-shell": sentence("note", (d: { percent: number; raw: boolean }) => {
    const edge = d.raw ? " Its topline has no fold, so it is taken as cut raw." : "";
    return `This job was saved by an older Lastwise, and its pattern comes out otherwise now: the topline is cut ${d.percent.toFixed(2)} % shorter than on the last, and the upper lies over lining, stiffener and toe puff.${edge} Look at these numbers before you cut, and sew a trial.`;
  }),
  "job-file-missing": sentence("stop", (d: { file: string }) => `The file ${d.file} that this job speaks of is missing. Put it beside the job, or save the job again from the app so that it holds the scan or picture itself.`),
  "tape-has-no-last": sentence("stop", (_: Record<string, never>) => `This job stands on a taped pattern, which has no last to measure. Ask for its pattern instead.`),
  "second-last-refused": sentence("look", (d: { file: string; why: string }) => `The second last, ${d.file}, was not held against the first, from which alone the pair is made. ${d.why}`),
  "picture-refused": sentence("stop", (d: { photo: string; why: string }) => `${d.photo}: ${d.why}`),
  "drawing-missing": sentence("stop", (d: { photo: string }) => `No drawing was found in ${d.photo}. Draw round the last with a thin dark line on plain paper, lay the card beside it, and take the picture again from straight above.`),
  "picture-side-unsaid": sentence("stop", (_: Record<string, never>) => `A taped pattern does not show which foot it is for. Say it: --tape right or --tape left.`),
  "picture-not-last": sentence("stop", (d: { file: string }) => `${d.file} is a picture, and there is no last in it to measure. From pictures of a taped pattern "lastwise make" makes the pattern.`),

  // Files and folders, as the command line and the app meet them.
  "option-list-parted": sentence("stop", (d: { word: string }) => `${d.word} stands apart, as if it were a file. Write lists without a space, for example --with strap,gore.`),
  "file-missing": sentence("stop", (d: { file: string }) => `There is no file ${d.file}. Check the name and the folder.`),
  "file-is-folder": sentence("stop", (d: { file: string }) => `${d.file} is a folder, not a file. Name the file of the scan or of the job inside it.`),
  "file-not-plain": sentence("stop", (d: { file: string }) => `${d.file} is not an ordinary file. Name the file of a scan or of a job.`),
  "file-no-permission": sentence("stop", (d: { file: string }) => `${d.file} may not be read by you. Copy it to a folder of your own or ask for the right to read it.`),
  "file-too-large": sentence("stop", (d: { file: string; megabytes: number; mostMegabytes: number }) => `${d.file} has ${d.megabytes} MB; at most ${d.mostMegabytes} MB are read. Export the scan at a lower resolution: an edge of 1 mm is plenty for a last.`),
  "file-unreadable": sentence("stop", (d: { file: string; why: string }) => `${d.file} cannot be read (${d.why}). Copy it to this machine's own disk and try again.`),
  "folder-is-file": sentence("stop", (d: { folder: string }) => `${d.folder} is a file, so nothing can be put into it. Name a folder.`),
  "folder-no-permission": sentence("stop", (d: { folder: string }) => `Nothing may be written in ${d.folder}. Choose a folder of your own.`),
  "folder-unusable": sentence("stop", (d: { folder: string; why: string }) => `Nothing can be written in ${d.folder} (${d.why}). Choose another folder.`),
  "disk-full": sentence("stop", (d: { folder: string }) => `The disk that holds ${d.folder} is full. Nothing was written; make room and try again.`),
  "option-not-number": sentence("stop", (d: { option: string; got: string; min: number; max: number }) => `${d.option} wants millimetres from ${d.min} to ${d.max}, not "${d.got}".`),
  "option-not-choice": sentence("stop", (d: { option: string; got: string; choices: string }) => `${d.option} can be ${d.choices}, not "${d.got}".`),
  "make-what": sentence("stop", (_: Record<string, never>) => `Name either the scan of a last, or a saved job, or the pictures of a taped pattern, or --example for the invented example pair.`),
  "make-one-last": sentence("stop", (d: { files: number }) => `${d.files} files are named; one pair is made from one scan or one saved job. Only pictures of a taped pattern may be several.`),
  "make-mixed": sentence("stop", (d: { picture: string; file: string }) => `${d.picture} is a picture and ${d.file} is not. Name only pictures of one taped pattern, or one scan, or one saved job.`),
  "make-same-name": sentence("stop", (d: { file: string }) => `Two of the pictures are called ${d.file}. Give one of them another name.`),
  "make-tape-of-what": sentence("stop", (d: { file: string }) => `--tape is for pictures of a taped pattern, and ${d.file} is not a picture. Leave --tape out, or name the pictures.`),
  "make-face-down-of-what": sentence("stop", (d: { file: string }) => `--face-down is for the pictures of a taped pattern, and there are none in ${d.file}. Leave --face-down out, or name the pictures.`),
  "make-bar-of-what": sentence("stop", (d: { file: string }) => `--bar is for pictures beside the printed card, and there are none in ${d.file}. Leave --bar out, or name the pictures.`),
  "reading-of-what": sentence("stop", (d: { file: string; option: string }) => `${d.option} is what your own callipers read on a last that was scanned, and ${d.file} is no scan of one. Leave ${d.option} out.`),
  "measure-foot-option": sentence("stop", (d: { file: string; option: string }) => `${d.file} is the scan of a foot, and ${d.option} is for lasts only. Leave ${d.option} out.`),
  "measure-second-refused": sentence("stop", (d: { file: string; why: string }) => `The second last, ${d.file}, cannot be held against the first. ${d.why}`),
  "option-too-long": sentence("stop", (d: { option: string; letters: number; most: number }) => `${d.option} has ${d.letters} letters; there is room for ${d.most}.`),
  "not-foretold": sentence("look", (d: { why: string }) => `How the upper ends when it is pulled over could not be foretold. ${d.why} The pattern itself is made; last a trial upper of cheap leather first.`),
};
