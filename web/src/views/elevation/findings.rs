//! What was found, worst first; a click moves the deck to where it happens.
use leptos::prelude::*;
use risewright::quantity::{Phrase, System};
use risewright::report::{Cure, Finding, Grade, Report};
use risewright::share::address::View;

use crate::clock::at_leisure;
use crate::persist;
use crate::state::{Shared, State};

/// The list. What would help is tried one after another once the design has rested for a moment; until then what was said before keeps its
/// room, unseen.
#[component]
pub fn Findings(state: State) -> impl IntoView {
    let tried = StoredValue::new(Tried::default());
    let items = move || {
        let units = state.units.get();
        let report = state.report.get();
        let remedies: Vec<RwSignal<Remedy>> = report
            .findings
            .iter()
            .map(|finding| RwSignal::new(tried.with_value(|tried| tried.now(&report, finding, units))))
            .collect();
        let lines = report
            .findings
            .iter()
            .zip(&remedies)
            .zip(1..)
            .map(|((finding, remedy), number)| {
                item(state, number, finding, finding.phrase.text(units), *remedy).into_any()
            })
            .collect_view();
        try_later(tried, report, units, remedies);
        lines
    };
    view! {
        <section class="findings" aria-label="Findings">
            <h2>"Findings"</h2>
            <ol>{items}</ol>
            <p class="elsewhere">
                "How it gives sideways, and under what load it would fold up, takes longer to compute: "
                <button type="button" on:click=move |_| persist::go_to_view(state, View::Sway)>"see Sway"</button>
            </p>
        </section>
    }
}

/// What would help against a finding, as far as it is known.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Remedy {
    /// Known; none where nothing helps.
    Known(Option<String>),
    /// Yet to be tried; what helped before the last edit.
    Awaited(Option<String>),
}

/// What helped when it was tried last.
struct Outcome {
    cure: Cure,
    /// None where nothing did.
    phrase: Option<Phrase>,
    /// Whether it was tried on the newest report of all that were tried.
    new: bool,
}

/// The newest report of all that were tried, and what helped against each finding when it was tried last.
#[derive(Default)]
struct Tried {
    report: Option<Shared<Report>>,
    outcomes: Vec<Outcome>,
}

impl Tried {
    /// What is known of a finding now.
    fn now(&self, report: &Shared<Report>, finding: &Finding, units: System) -> Remedy {
        let text = |phrase: &Option<Phrase>| phrase.as_ref().map(|phrase| phrase.text(units));
        let Some(cure) = finding.cure else { return Remedy::Known(text(&finding.remedy)) };
        match self.outcomes.iter().find(|outcome| outcome.cure == cure) {
            Some(last) if last.new && self.report.as_ref() == Some(report) => {
                Remedy::Known(text(&last.phrase))
            }
            last => Remedy::Awaited(last.and_then(|last| text(&last.phrase))),
        }
    }

    /// Takes down what was found for a report.
    fn note(&mut self, report: &Shared<Report>, cure: Cure, phrase: Option<Phrase>) {
        if self.report.as_ref() != Some(report) {
            self.report = Some(report.clone());
            self.outcomes.iter_mut().for_each(|outcome| outcome.new = false);
        }
        self.outcomes.retain(|outcome| outcome.cure != cure);
        self.outcomes.push(Outcome { cure, phrase, new: true });
    }
}

/// Tries what would help against the findings of a report, until the list is replaced by another.
fn try_later(
    tried: StoredValue<Tried>,
    report: Shared<Report>,
    units: System,
    remedies: Vec<RwSignal<Remedy>>,
) {
    let awaited =
        |remedy: &RwSignal<Remedy>| remedy.with_untracked(|remedy| matches!(remedy, Remedy::Awaited(_)));
    let mut waiting: Vec<usize> =
        (0..remedies.len()).rev().filter(|place| remedies.get(*place).is_some_and(awaited)).collect();
    if waiting.is_empty() {
        return;
    }
    at_leisure(move || {
        let Some(place) = waiting.pop() else { return false };
        let (Some(finding), Some(remedy)) = (report.findings.get(place), remedies.get(place)) else {
            return false;
        };
        // A signal of a list that is gone is not there any more.
        if remedy.is_disposed() {
            return false;
        }
        let phrase = report.remedy(finding);
        let words = phrase.as_ref().map(|phrase| phrase.text(units));
        if let Some(cure) = finding.cure {
            tried.try_update_value(|tried| tried.note(&report, cure, phrase));
        }
        remedy.set(Remedy::Known(words));
        !waiting.is_empty()
    });
}

fn item(
    state: State,
    number: usize,
    finding: &Finding,
    words: String,
    remedy: RwSignal<Remedy>,
) -> impl IntoView + use<> {
    let grade = finding.grade;
    let sentence = view! { <b class="word">{grade.word()}</b> " " {words} };
    let sentence = match finding.height {
        Some(height) => {
            view! {
                <button type="button" class="go" title="Move the deck there" on:click=move |_| state.go_to(height)>
                    {sentence}
                </button>
            }
            .into_any()
        }
        None => view! { <p>{sentence}</p> }.into_any(),
    };
    view! {
        <li class=class(grade)>
            {mark(grade, number)}
            <div>{sentence} {move || told(remedy.get())}</div>
        </li>
    }
}

fn told(remedy: Remedy) -> impl IntoView {
    let (class, words) = match remedy {
        Remedy::Known(words) => ("remedy", words),
        Remedy::Awaited(words) => ("remedy awaited", words),
    };
    words.map(|words| view! { <p class=class>{words}</p> })
}

/// The class of a grade.
pub const fn class(grade: Grade) -> &'static str {
    match grade {
        Grade::Over => "over",
        Grade::Watch => "watch",
        Grade::Fine => "fine",
    }
}

/// Triangle, diamond or circle with the finding's number.
pub fn mark(grade: Grade, number: usize) -> impl IntoView {
    let (shape, outline, base) = match grade {
        Grade::Over => ("mk over", "M0 -8.8L9.04 6.56L-9.04 6.56Z", "4.96"),
        Grade::Watch => ("mk watch", "M0 -9.2L9.2 0L0 9.2L-9.2 0Z", "3.7"),
        Grade::Fine => ("mk fine", "M7.36 0A7.36 7.36 0 0 1 -7.36 0A7.36 7.36 0 0 1 7.36 0Z", "3.7"),
    };
    let lettering = if grade == Grade::Over { "mt inv" } else { "mt" };
    view! {
        <svg class="mark" width="22" height="22" viewBox="-11 -11 22 22" aria-hidden="true">
            <path class=shape d=outline></path>
            <text class=lettering x="0" y=base text-anchor="middle">{number}</text>
        </svg>
    }
}
