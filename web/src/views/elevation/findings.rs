//! What was found, worst first; a click moves the deck to where it happens.
use leptos::prelude::*;
use risewright::quantity::System;
use risewright::report::{Finding, Grade, Report};
use risewright::share::address::View;

use crate::clock::each_frame;
use crate::persist;
use crate::state::{Shared, State};

/// The list. What would help is known for the worst at once; for the others it is tried one after another, a frame each, and then stands there
/// too.
#[component]
pub fn Findings(state: State) -> impl IntoView {
    let items = move || {
        let units = state.units.get();
        let report = state.report.get();
        let remedies: Vec<RwSignal<Option<String>>> = report
            .findings
            .iter()
            .map(|finding| RwSignal::new(finding.remedy.as_ref().map(|remedy| remedy.text(units))))
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
        try_later(report, units, remedies);
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

/// Tries what would help against the findings that came without a remedy, until the list is replaced by another.
fn try_later(report: Shared<Report>, units: System, remedies: Vec<RwSignal<Option<String>>>) {
    let open = |finding: &Finding| finding.remedy.is_none() && finding.check.is_some();
    let mut waiting: Vec<usize> =
        (0..remedies.len()).rev().filter(|place| report.findings.get(*place).is_some_and(open)).collect();
    if waiting.is_empty() {
        return;
    }
    each_frame(move |_| {
        let Some(place) = waiting.pop() else { return false };
        let tried = report.findings.get(place).and_then(|finding| report.remedy(finding));
        let words = tried.map(|remedy| remedy.text(units));
        // A signal of a list that is gone takes nothing.
        let replaced = remedies.get(place).is_none_or(|remedy| remedy.try_set(words).is_some());
        !replaced
    });
}

fn item(
    state: State,
    number: usize,
    finding: &Finding,
    words: String,
    remedy: RwSignal<Option<String>>,
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
            <div>{sentence} {move || remedy.get().map(|remedy| view! { <p class="remedy">{remedy}</p> })}</div>
        </li>
    }
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
