//! What was answered so far, and the targets that follow from it.
use super::asked::{ASKS, Ask, of_design};
use crate::catalogue::panel::PANELS;
use crate::catalogue::sheet::SHEET_SIZES;
use crate::catalogue::thread::{Series, THREADS, Thread};
use crate::design::{Design, panel, sheet, thread};
use crate::quantity::{Amount, Kind, Length, System, read};
use crate::report::search::{Stance, Targets, Way, pins};
use crate::share::link;
use std::collections::BTreeMap;

/// Keys of answers that are no quantity.
pub(super) const PRESENT: &str = "present";
/// The answer by which the page is told of the present design, as a link.
pub(super) const DESIGN: &str = "design";
pub(super) const SEARCH: &str = "search";
pub(super) const PICK: &str = "pick";
pub(super) const PANEL: &str = "panel";
pub(super) const SHEET: &str = "sheet-size";
pub(super) const STAGES: &str = "stages";
/// A weight's key is that of its quantity with this behind it; what one can buy or would build has its number behind these.
pub(super) const STANCE: &str = "-stance";
pub(super) const THREAD: &str = "thread-";
pub(super) const PIN: &str = "pin-";
pub(super) const WAY: &str = "way-";

/// Stances with the word they have in answers and on the page.
pub(super) const STANCES: [(Stance, &str, &str); 3] =
    [(Stance::Limit, "limit", "must hold"), (Stance::Wish, "wish", "wish"), (Stance::Free, "free", "any")];

/// An answer as it was given, and in which units.
#[derive(Clone, Debug, PartialEq)]
struct Answer {
    text: String,
    system: System,
}

/// The form.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Form {
    /// The design whose figures were taken over; none while the first targets stand.
    present: Option<Design>,
    answers: BTreeMap<String, Answer>,
}

/// A quantity as it stands in the form.
pub(super) struct Standing {
    pub text: String,
    pub fault: String,
}

impl Form {
    /// Takes an answer in.
    pub fn hear(&mut self, key: &str, text: &str, system: System) {
        if key == PRESENT {
            self.present = link::decode(text).ok();
        }
        self.answers.insert(key.to_owned(), Answer { text: text.to_owned(), system });
    }

    /// Keys of the form as they stand on the page. After a design's figures were taken over, its questions are other questions: what was
    /// answered before does not count for them.
    pub fn key(&self, key: &str) -> String {
        match &self.present {
            None => key.to_owned(),
            Some(design) => format!("{key}-of-{}", mark(&link::encode(design))),
        }
    }

    fn answered(&self, key: &str) -> Option<&Answer> {
        self.answers.get(&self.key(key))
    }

    /// The targets before anything is answered, in the units of a reader.
    fn first(&self, system: System) -> Targets {
        let own = self.present.as_ref().and_then(thread).map(|row| row.series);
        let system = match own {
            Some(Series::Acme | Series::Unc) => System::Inch,
            Some(_) => System::Metric,
            None => system,
        };
        let mut targets = Targets::first(system);
        if let Some(design) = &self.present {
            of_design(&mut targets, design);
        }
        targets
    }

    /// The targets as far as answers can be used, and whether all can be.
    pub fn targets(&self, system: System) -> (Targets, bool) {
        let mut targets = self.first(system);
        let mut sound = true;
        for ask in &ASKS {
            match self.steps(ask) {
                Some(Ok(steps)) => (ask.set)(&mut targets, steps),
                Some(Err(_)) => sound = false,
                None => {}
            }
            let stance = self.answered(&format!("{}{STANCE}", ask.key));
            let stance = stance.and_then(|answer| STANCES.iter().find(|(_, word, _)| *word == answer.text));
            if let (Some(weight), Some((stance, ..))) = (ask.weight, stance) {
                *weight(&mut targets) = *stance;
            }
        }
        self.stock(&mut targets);
        let bought = |prefix: &str, number: usize, default: bool| {
            self.answered(&format!("{prefix}{number}")).map_or(default, |answer| answer.text == "yes")
        };
        targets.threads = offered(targets.units)
            .filter(|row| bought(THREAD, usize::from(row.id), targets.threads.contains(row)))
            .collect();
        targets.pins = pins(targets.units)
            .into_iter()
            .enumerate()
            .filter(|(at, pin)| bought(PIN, *at, targets.pins.contains(pin)))
            .map(|(_, pin)| pin)
            .collect();
        targets.ways = Way::ALL
            .into_iter()
            .enumerate()
            .filter(|(at, way)| bought(WAY, *at, targets.ways.contains(way)))
            .map(|(_, way)| way)
            .collect();
        sound &= self.trouble(&targets).is_empty();
        (targets, sound)
    }

    fn stock(&self, targets: &mut Targets) {
        let number = |key: &str| self.answered(key).and_then(|answer| answer.text.parse::<u16>().ok());
        if let Some(row) = number(PANEL).and_then(|id| PANELS.iter().find(|row| row.id == id)) {
            targets.set_panel(row);
        }
        if let Some(row) = number(SHEET).and_then(|id| SHEET_SIZES.iter().find(|row| row.id == id)) {
            targets.set_sheet(row);
        }
        if let Some(stages) = number(STAGES) {
            targets.stages = i64::from(stages).clamp(1, 4);
        }
    }

    /// The answer to a quantity in steps, or what is wrong with it; none where there is none.
    fn steps(&self, ask: &Ask) -> Option<Result<i64, String>> {
        let answer = self.answered(ask.key)?;
        let steps = read(&answer.text, ask.kind, answer.system).map_err(|fault| fault.to_string());
        Some(steps.and_then(|steps| {
            let (from, to) = ask.range;
            let written = |steps| Amount::Written(ask.kind, steps).text(answer.system);
            if (from..=to).contains(&steps) {
                Ok(steps)
            } else {
                Err(format!("Between {} and {}.", written(from), written(to)))
            }
        }))
    }

    /// A quantity as the form shows it.
    pub fn standing(&self, ask: &Ask, targets: &Targets, system: System) -> Standing {
        let plain = || match ask.kind {
            Kind::Money | Kind::Rate if (ask.get)(targets) == 0 && ask.range.0 == 0 => String::new(),
            kind => Amount::Written(kind, (ask.get)(targets)).text(system),
        };
        match (self.steps(ask), self.answered(ask.key)) {
            (Some(Err(fault)), Some(answer)) if !is_no_price(ask, &answer.text) => {
                Standing { text: answer.text.clone(), fault }
            }
            _ => Standing { text: plain(), fault: String::new() },
        }
    }

    /// What is wrong with the form as a whole, a sentence each; nothing where it can be searched.
    pub fn trouble(&self, targets: &Targets) -> Vec<&'static str> {
        let mut list = Vec::new();
        let mut need = |is: bool, words: &'static str| {
            if !is {
                list.push(words);
            }
        };
        need(targets.highest.value > targets.lowest.value, "The highest deck must stand above the lowest.");
        need(!targets.threads.is_empty(), "Mark a screw at least.");
        need(!targets.pins.is_empty(), "Mark a size of pivot bolts at least.");
        need(!targets.ways.is_empty(), "Mark a place for the screw at least.");
        let wrong = ASKS.iter().any(|ask| {
            let empty = self.answered(ask.key).is_some_and(|answer| is_no_price(ask, &answer.text));
            matches!(self.steps(ask), Some(Err(_))) && !empty
        });
        need(!wrong, "Mend the answers that are marked.");
        list
    }

    /// The panel of the targets, if it is in the catalogue.
    pub fn panel(targets: &Targets) -> String {
        panel(&targets.base).map_or_else(String::new, |row| row.id.to_string())
    }

    /// The sheet of the targets, if it is in the catalogue.
    pub fn sheet(targets: &Targets) -> String {
        sheet(&targets.base).map_or_else(String::new, |row| row.id.to_string())
    }
}

/// A price that is left empty is one not known, not a fault.
fn is_no_price(ask: &Ask, text: &str) -> bool {
    matches!(ask.kind, Kind::Money | Kind::Rate) && ask.range.0 == 0 && text.trim().is_empty()
}

/// Screws that are offered to readers of a system.
pub(super) fn offered(system: System) -> impl Iterator<Item = &'static Thread> {
    let (thin, thick) = (Length::mm(12.0), Length::mm(32.0));
    THREADS.iter().filter(move |row| {
        let metric = matches!(row.series, Series::Trapezoidal | Series::MetricCoarse);
        metric == (system == System::Metric) && (thin..=thick).contains(&row.major())
    })
}

/// A short name for a link: 32 bits of FNV-1a (G. Fowler, L. C. Noll, K.-P. Vo), in figures of base 16.
fn mark(text: &str) -> String {
    let sum =
        text.bytes().fold(0x811C_9DC5_u32, |sum, byte| (sum ^ u32::from(byte)).wrapping_mul(0x0100_0193));
    format!("{sum:x}")
}
