//! The elevation on paper: one page, true to a stated scale. Made when the page is printed, for the paper it is printed on.
use leptos::prelude::*;
use risewright::drawing::Face;
use risewright::drawing::poster::{self, KeyFigures, PAPER, Panel, Poster, Ruler};
use risewright::pages::CAUTIONS;
use risewright::quantity::System;
use risewright::report::{Grade, Report};
use risewright::share::Manner;
use risewright::share::address::View;

use super::findings::{class, mark};
use crate::format;
use crate::persist;
use crate::state::State;
use crate::widgets::lettering::Lettering;
use crate::widgets::printing::printing;

/// A sheet of paper: its class in the style sheet and what is left of it between the margins, mm.
#[derive(Clone, Copy)]
struct Sheet {
    class: &'static str,
    room: [f64; 2],
}

/// 210 by 297 mm and 8 1/2 by 11 in, less 10 mm on every side. The style sheet shows the one that goes with the page.
const SHEETS: [Sheet; 2] =
    [Sheet { class: "wall a4", room: [190.0, 277.0] }, Sheet { class: "wall letter", room: [195.9, 259.4] }];

/// Kept for the words beside the drawing, the strip with the bar beneath it, and the heading over each drawing, mm.
const WORDS: f64 = 53.0;
const STRIP: f64 = 16.5;
const HEADING: f64 = 6.0;

/// Nothing on screen, a page on paper.
#[component]
pub fn Wall(state: State) -> impl IntoView {
    let printing = printing();
    let sheets = move || {
        printing.get().then(|| {
            let lettering = Lettering::new();
            let measure = |words: &str, face: Face| lettering.width(words, face);
            let units = state.units.get();
            state.report.with(|report| {
                SHEETS
                    .map(|sheet| {
                        let [width, height] = sheet.room;
                        let room = [width - WORDS, height - STRIP];
                        let poster = Poster::new(report, units, room, HEADING, &measure);
                        let link = persist::link_to(View::Elevation, &Manner::default(), &report.design);
                        let column = Column { width: width * PAPER - poster.width, measure: &measure };
                        let left = height * PAPER - column.taken(report, units, &link);
                        let findings = column.findings(report, units, left);
                        page(sheet.class, report, &poster, units, &link, findings)
                    })
                    .collect_view()
            })
        })
    };
    view! { <div class="walls">{sheets}</div> }
}

fn page(
    class: &'static str,
    report: &Report,
    poster: &Poster,
    units: System,
    link: &str,
    findings: Findings,
) -> impl IntoView + use<> {
    let panels =
        poster.panels(units).into_iter().map(|(heading, panel)| drawing(heading, panel, poster.width));
    view! {
        <section class=class>
            <div class="wall-drawings">{panels.collect_view()} {bar(units)}</div>
            <div class="wall-words">
                <section>
                    <h2>{report.design.name.clone()}</h2>
                    <p>{poster::summary(report, units)}</p>
                </section>
                {keys(report, units)} {list(findings)}
                <section class="wall-cautions">
                    <h3>"Before you raise it"</h3>
                    <ul>{CAUTIONS.into_iter().map(|caution| view! { <li>{caution}</li> }).collect_view()}</ul>
                </section>
                <section>
                    <h3>"This design as a link"</h3>
                    <p class="wall-link">{link.to_owned()}</p>
                </section>
                <dl class="wall-title">
                    <div><dt>"View"</dt><dd>"Side elevation"</dd></div>
                    <div><dt>"Scale"</dt><dd>{poster::ratio_words(poster.ratio, units)}</dd></div>
                    <div><dt>"Dimensions"</dt><dd>{format::length_unit(units)}</dd></div>
                    <div><dt>"Made with"</dt><dd>"Risewright"</dd></div>
                </dl>
            </div>
        </section>
    }
}

/// A length of so many px in mm, for an attribute.
fn millimetres(pixels: f64) -> String {
    format!("{:.3}mm", pixels / PAPER)
}

fn drawing(heading: String, panel: &Panel, width: f64) -> impl IntoView + use<> {
    let height = panel.height();
    view! {
        <figure>
            <figcaption>{heading.clone()}</figcaption>
            <svg
                class="dwg"
                width=millimetres(width)
                height=millimetres(height)
                viewBox=format!("0 {:.2} {width:.2} {height:.2}", panel.top)
                role="img"
                aria-label=heading
                inner_html=panel.marks()
            ></svg>
        </figure>
    }
}

fn bar(units: System) -> impl IntoView {
    let (width, height) = Ruler::SIZE;
    let ruler = Ruler::new(units);
    view! {
        <div class="wall-bar">
            <p>{ruler.words}</p>
            <svg
                class="dwg"
                width=millimetres(width)
                height=millimetres(height)
                viewBox=format!("0 0 {width} {height}")
                aria-hidden="true"
                inner_html=ruler.marks
            ></svg>
        </div>
    }
}

fn keys(report: &Report, units: System) -> impl IntoView + use<> {
    let keys = KeyFigures::of(report, units);
    let rows = keys.rows.into_iter().map(|row| {
        view! {
            <tr>
                <th scope="row">{row.name}</th>
                <td>{row.lowest}</td>
                <td>{row.highest}</td>
                <td class="unit">{row.unit}</td>
            </tr>
        }
    });
    view! {
        <section>
            <h3>"Key figures"</h3>
            <table>
                <thead>
                    <tr><th>{keys.load}</th><th scope="col">"lowest"</th><th scope="col">"highest"</th><th></th></tr>
                </thead>
                <tbody>{rows.collect_view()}</tbody>
            </table>
            <p>{keys.note}</p>
        </section>
    }
}

/// Findings in words, those for which the page has room, and how many there are besides.
struct Findings {
    told: Vec<(Grade, String)>,
    more: usize,
}

/// The column of words beside the drawings.
struct Column<'a> {
    /// Its width, px.
    width: f64,
    measure: &'a dyn Fn(&str, Face) -> f64,
}

/// Height of a line and what a section takes beside its lines, px; size of the words against that of the measured face. As in the style sheet.
const LINE: f64 = 13.0;
const SECTION: f64 = 32.0;
const SIZE: f64 = 10.0 / 11.5;
/// The inner margins of the column and what marks and bullets take, px.
const INSIDE: f64 = 22.0;
const HANGING: f64 = 24.0;

impl Column<'_> {
    /// Height of so many words that stand `aside` from the left edge, px. A line is not filled to its end.
    fn height(&self, words: &str, aside: f64) -> f64 {
        const FILLED: f64 = 0.9;
        let wide = (self.measure)(words, Face::Plain) * SIZE;
        (wide / (FILLED * (self.width - INSIDE - aside))).ceil().max(1.0) * LINE
    }

    /// What all but the findings take, px.
    fn taken(&self, report: &Report, units: System, link: &str) -> f64 {
        /// Lines of the table with its head, and of the title block with the name above.
        const ROWS: f64 = 12.0;
        const BLOCKS: f64 = 7.0;
        let note = KeyFigures::of(report, units).note;
        let words = self.height(&poster::summary(report, units), 0.0)
            + self.height(&note, 0.0)
            + self.height(link, 0.0);
        let cautions: f64 = CAUTIONS.iter().map(|caution| self.height(caution, HANGING) + 2.0).sum();
        words + cautions + (ROWS + BLOCKS) * LINE + 5.0 * SECTION
    }

    /// As many findings as have room in a height, the worst first, at least one; what would help those that are not fine is tried now.
    fn findings(&self, report: &Report, units: System, mut left: f64) -> Findings {
        let mut told = Vec::new();
        for finding in &report.findings {
            let mut words = finding.phrase.text(units);
            if let Some(remedy) = report.remedy(finding) {
                words = format!("{words} {}", remedy.text(units));
            }
            left -= self.height(&format!("{} {words}", finding.grade.word()), HANGING) + 3.0;
            if left < LINE && !told.is_empty() {
                break;
            }
            told.push((finding.grade, words));
        }
        Findings { more: report.findings.len() - told.len(), told }
    }
}

fn list(findings: Findings) -> impl IntoView {
    let worst = findings.told.first().map_or(Grade::Fine, |told| told.0);
    let heading = if worst == Grade::Fine { "Findings: all fine" } else { "Findings" };
    let items = findings.told.into_iter().zip(1..).map(|((grade, words), number)| {
        view! {
            <li class=class(grade)>
                {mark(grade, number)}
                <p><b class="word">{grade.word()}</b> " " {words}</p>
            </li>
        }
    });
    let more = (findings.more > 0).then(|| {
        view! { <p>{format!("{} more stand on the page behind the link.", findings.more)}</p> }
    });
    view! {
        <section>
            <h3>{heading}</h3>
            <ol class="wall-findings">{items.collect_view()}</ol>
            {more}
        </section>
    }
}
