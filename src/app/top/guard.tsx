import { Component, type ReactElement, type ReactNode } from "react";
import type { Desk } from "../desk.ts";
import { saveJob } from "../download.ts";

interface GuardProps {
  readonly desk: Desk;
  readonly children: ReactNode;
}

/** Where the page itself breaks down (a fault of ours), the maker is told, keeps her work and gets a way out instead of a blank page. */
export class Guard extends Component<GuardProps, { readonly why: string | undefined }> {
  override readonly state = { why: undefined };

  static getDerivedStateFromError(error: unknown): { readonly why: string } {
    return { why: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { desk, children } = this.props;
    return this.state.why === undefined ? children : <BrokenPage desk={desk} why={this.state.why} onBegin={() => this.#begin()} />;
  }

  #begin(): void {
    this.props.desk.startOver();
    this.setState({ why: undefined });
  }
}

function BrokenPage({ desk, why, onBegin }: { readonly desk: Desk; readonly why: string; readonly onBegin: () => void }): ReactElement {
  return (
    <main className="picture">
      <h1>Lastwise</h1>
      <p className="nothing low" role="alert">
        The page broke down: a fault in the program itself ({why}). Your work is still kept.{" "}
        <button type="button" className="word" onClick={() => location.reload()}>Load the page again</button>, or{" "}
        <button type="button" className="word" onClick={() => saveJob(desk)}>save the work to a file</button> and{" "}
        <button type="button" className="word" onClick={onBegin}>begin with the example last</button>.
      </p>
    </main>
  );
}
