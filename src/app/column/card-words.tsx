import { useState, type ReactElement } from "react";
import { cardPapers, type CardPaper } from "#photo/card.ts";
import { downloadBytes } from "../download.ts";

/** The card of squares to print, on either paper; it is drawn when asked for. */
export function CardWords(): ReactElement {
  const [wrong, setWrong] = useState(false);
  const get = async (paper: CardPaper): Promise<void> => {
    try {
      const { cardPdf } = await import("#sheets/card.ts");
      downloadBytes(`card ${paper}.pdf`, await cardPdf(paper), "application/pdf");
      setWrong(false);
    } catch {
      setWrong(true);
    }
  };
  return (
    <>
      {cardPapers.map((paper, i) => (
        <span key={paper}>{i > 0 ? " or " : ""}<button type="button" className="word" aria-label={`the card to print, on ${paper}`} onClick={() => void get(paper)}>{i === 0 ? `The card on ${paper}` : paper}</button></span>
      ))}
      {wrong ? " (it could not be drawn: reload the page and try again)." : " (PDF)."}
    </>
  );
}
