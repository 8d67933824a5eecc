//! Bars, tubes and battens with their cuts, all at one scale.
use super::Drawn;
use super::hatch::hatch;
use crate::drawing::face::Measure;
use crate::drawing::frame::Area;
use crate::drawing::lettering::{Lettering, text};
use crate::drawing::mark::{Anchor, Mark};
use crate::drawing::scale::Screen;
use crate::parts::Form;
use crate::quantity::{Length, System, capital, figures};
use crate::workshop::sheets::Bar;

/// Height of a heading, and of the line of lettering over a bar, px.
const HEADING: f64 = 22.0;
const LABELS: f64 = 20.0;
/// From a bar to what stands beneath it, px.
const BENEATH: f64 = 8.0;
/// A bar is drawn no thinner than this, px.
const THIN: f64 = 4.0;
/// Radius of the circle around a part's number, px.
const RING: f64 = 8.5;

/// Every bar under its section, at one scale, on paper so many px wide; nothing where there is no bar.
#[must_use]
pub fn bars(list: &[Bar], kerf: Length, system: System, width: f64, measure: Measure<'_>) -> Drawn {
    let longest = list.iter().map(|bar| bar.length).max().unwrap_or(Length::ZERO).to_mm();
    if longest <= 0.0 {
        return Drawn::default();
    }
    let per_mm = (width - 2.0).max(1.0) / longest;
    let mut lettering = Lettering::new(measure, Area { x: 0.0, y: 0.0, width, height: f64::INFINITY });
    let (mut marks, mut y) = (Vec::new(), 0.0);
    let mut before: Option<(Form, [Length; 2])> = None;
    for bar in list {
        if before != Some((bar.form, bar.section)) {
            before = Some((bar.form, bar.section));
            marks.push(lettering.set(text(
                "b",
                Screen::new(0.0, y + 15.0),
                Anchor::Start,
                &section(bar, system),
            )));
            y += HEADING;
        }
        let size = figures::marked(bar.length, system).number;
        y += LABELS;
        let deep = (bar.section[0].to_mm() * per_mm).max(THIN);
        let area =
            |from: f64, to: f64| Area::between([1.0 + from * per_mm, 1.0 + to * per_mm], [y, y + deep]);
        let rest = area(bar.length.to_mm() - bar.rest(kerf).to_mm(), bar.length.to_mm());
        marks.push(Mark::path("hatch", hatch(&rest)));
        let mut from = 0.0;
        for run in bar.cuts.chunk_by(|one, other| one == other) {
            let Some((part, length)) = run.first() else { continue };
            let start = from;
            for _ in run {
                let cut = area(from, from + length.to_mm());
                marks.push(Mark::rect("n ply", Screen::new(cut.x, cut.y), cut.width, cut.height));
                from += (*length + kerf).to_mm();
            }
            let each = figures::marked(*length, system).number;
            let words = if run.len() > 1 { format!("{each}, {} off", run.len()) } else { each };
            marks.extend(label(&mut lettering, &area(start, from - kerf.to_mm()), *part, &words));
        }
        let words = format!("{} left of {size}", figures::marked(bar.rest(kerf), system).number);
        let end = 1.0 + bar.length.to_mm() * per_mm;
        let forms = [
            (rest.x + rest.width / 2.0, Anchor::Middle),
            (end, Anchor::End),
            (rest.x, Anchor::Start),
            (end + 8.0, Anchor::Start),
            (width - 1.0, Anchor::End),
        ];
        marks.push(
            lettering.place(forms.map(|(x, anchor)| text("s", Screen::new(x, y - 5.0), anchor, &words))),
        );
        marks.push(Mark::rect("w none", Screen::new(1.0, y), bar.length.to_mm() * per_mm, deep));
        y += deep + BENEATH;
    }
    Drawn { width, height: y, marks }
}

/// The number of a part and its length, over its place in the bar.
fn label(lettering: &mut Lettering<'_>, over: &Area, part: u32, words: &str) -> Vec<Mark> {
    let (base, number) = (over.y - 5.0, part.to_string());
    let long = 2.0 * RING + 5.0 + lettering.width("dt", words);
    let middle = over.x + over.width / 2.0;
    let left =
        [middle - long / 2.0, over.x, over.right() - long, middle].into_iter().map(|left| left.max(0.0));
    for left in left {
        let ring = Screen::new(left + RING, base - 4.0);
        let number = text("mt", ring.by(0.0, 3.8), Anchor::Middle, &number);
        let size = text("dt", Screen::new(left + 2.0 * RING + 5.0, base), Anchor::Start, words);
        let free = [&number, &size]
            .into_iter()
            .all(|mark| lettering.area(mark).is_none_or(|area| lettering.is_free(&area)));
        if free {
            return vec![Mark::circle("ring", ring, RING), lettering.set(number), lettering.set(size)];
        }
    }
    Vec::new()
}

fn section(bar: &Bar, system: System) -> String {
    let [wide, thick] = bar.section;
    let name = capital(bar.form.word());
    let lead = figures::threads(thick, system);
    let (wide, thick) = (figures::marked(wide, system), figures::marked(thick, system));
    match bar.form {
        Form::RoundBar => format!("{name}, diameter {wide}"),
        Form::ThreadedBar => format!("{name}, diameter {}, lead {}", wide.number, lead.unwrap_or(thick)),
        Form::SquareTube => format!("{name} {}, wall {thick}", wide.number),
        Form::BronzeTube => format!("{name}, outside {}, bore {thick}", wide.number),
        _ => format!("{name} {} × {thick}", wide.number),
    }
}
