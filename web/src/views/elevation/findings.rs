//! What was found, worst first; a click moves the deck to where it happens.
use leptos::prelude::*;
use risewright::report::{Finding, Grade};

use crate::state::State;

/// The list.
#[component]
pub fn Findings(state: State) -> impl IntoView {
    let items = move || {
        let units = state.units.get();
        state.report.with(|report| {
            report
                .findings
                .iter()
                .enumerate()
                .map(|(place, finding)| {
                    let words = finding.phrase.text(units);
                    let remedy = finding.remedy.as_ref().map(|remedy| remedy.text(units));
                    item(state, place + 1, finding, words, remedy).into_any()
                })
                .collect_view()
        })
    };
    view! {
        <section class="findings" aria-label="Findings">
            <h2>"Findings"</h2>
            <ol>{items}</ol>
        </section>
    }
}

fn item(
    state: State,
    number: usize,
    finding: &Finding,
    words: String,
    remedy: Option<String>,
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
            <div>{sentence} {remedy.map(|remedy| view! { <p class="remedy">{remedy}</p> })}</div>
        </li>
    }
}

const fn class(grade: Grade) -> &'static str {
    match grade {
        Grade::Over => "over",
        Grade::Watch => "watch",
        Grade::Fine => "fine",
    }
}

/// Triangle, diamond or circle with the finding's number.
fn mark(grade: Grade, number: usize) -> impl IntoView {
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
