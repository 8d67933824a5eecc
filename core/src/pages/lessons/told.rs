//! The words of a lesson.
use super::lesson::{Answers, Beat};
use super::paper;
use super::plan::Plan;
use super::plot::{HANDLES, axis_end, handle_height, sampled};
use super::studied::{Studied, Study};
use crate::drawing::freed::part_words;
use crate::mechanics::Freed;
use crate::pages::Document;
use crate::pages::document::{Act, Block, Cell, Entry, Field, Table, Text};
use crate::pages::forces::cut_free;
use crate::quantity::{Amount, System};
use crate::report::Doing;
use crate::share::address::View;
use crate::share::lesson::Lesson;

/// Size of the part cut free, px.
const FREED: (u32, u32) = (760, 320);

/// Who predicts before looking learns more than who only looks: C. H. Crouch and others, American Journal of Physics 72 (2004) 835.
const UNGUESSED: &str = "You made no guess. Go back to 1 and make one: a wrong guess teaches more than none.";

/// A guess this near, as a share of the axis, is right.
const NEAR: f64 = 0.08;

pub(super) fn document(plan: &Plan, study: &Study, answers: &Answers, system: System) -> Document {
    let title = format!("Lesson {}: {}", plan.which.number(), plan.which.title());
    if let Some(trouble) = &study.trouble {
        return Document { title, blocks: vec![Block::text(trouble.as_str())] };
    }
    if !study.done {
        return Document {
            title,
            blocks: vec![Block::note("The tables of this lesson are being computed.")],
        };
    }
    let known = &study.known;
    let mut screen = vec![beats(answers.beat), Block::text((plan.scene)(known, system))];
    match answers.beat {
        Beat::Guess => screen.extend(guess(plan, known, answers, system)),
        Beat::See => screen.extend(see(answers)),
        Beat::Why => {
            let found = if answers.guessed { judged(plan, known, answers, system) } else { UNGUESSED.into() };
            screen.push(Block::text(found));
            screen.extend(why(plan, known, system));
            screen.extend(closing(plan, answers));
            screen.push(Block::Fold(crate::pages::document::Fold {
                id: "lesson-table".into(),
                line: vec![Cell::words("Your guess beside the figures")],
                blocks: vec![table(plan, known, answers, system)],
                open: false,
            }));
        }
    }
    screen.push(ways(plan.which));
    let mut blocks = vec![Block::Group("lesson", screen)];
    blocks.extend(paper::worksheet(plan, known, system));
    Document { title, blocks }
}

fn beats(now: Beat) -> Block {
    Block::Acts(
        Beat::ALL
            .into_iter()
            .map(|beat| Act::Answer {
                words: beat.title().into(),
                key: "beat".into(),
                value: beat.word().into(),
                pressed: Some(beat == now),
            })
            .collect(),
    )
}

fn to(words: &str, beat: Beat) -> Block {
    Block::Acts(vec![Act::Answer {
        words: words.into(),
        key: "beat".into(),
        value: beat.word().into(),
        pressed: None,
    }])
}

fn guess(plan: &Plan, known: &Studied, answers: &Answers, system: System) -> Vec<Block> {
    let end = axis_end(plan, known, system);
    let fields = (0..HANDLES).rev().map(|at| {
        let height = Amount::Size(handle_height(known, at)).text(system);
        let value = plan.unit.amount(answers.guess[at] * end, system);
        Block::Field(Field {
            key: format!("g{at}"),
            label: format!("at {height}: {value}"),
            value: format!("{:.2}", answers.guess[at]),
            hint: String::new(),
            fault: String::new(),
            entry: Entry::Slid { least: 0.0, most: 1.0, step: 0.02, words: format!("at {height}: {value}") },
        })
    });
    vec![
        Block::Text(Text::default().strong(plan.question)),
        Block::note("Draw it in the plot, or set it here. A shape will do; nobody counts the millimetres."),
        Block::Group("lesson-guess", fields.collect()),
        to("Show me", Beat::See),
    ]
}

/// The truth is seen in the picture, where the deck has been, and nowhere else yet.
fn see(answers: &Answers) -> Vec<Block> {
    let mut blocks = vec![Block::text(
        "Now move the deck from the bottom to the top: the curve appears where the deck has been.",
    )];
    if !answers.guessed {
        blocks.push(Block::text(UNGUESSED));
    }
    blocks.push(to("Say why", Beat::Why));
    blocks
}

/// Guess and truth as shares of the axis at a handle.
fn pair(plan: &Plan, known: &Studied, answers: &Answers, system: System, at: usize) -> (f64, f64) {
    let value = sampled(known, &known.sought, handle_height(known, at));
    (answers.guess[at], value / axis_end(plan, known, system))
}

fn judged(plan: &Plan, known: &Studied, answers: &Answers, system: System) -> String {
    let pairs = (0..HANDLES).map(|at| pair(plan, known, answers, system, at));
    let near = pairs.clone().filter(|(guess, truth)| (guess - truth).abs() <= NEAR).count();
    let (guess_slope, true_slope) = {
        let ends = |of: fn((f64, f64)) -> f64| {
            of(pair(plan, known, answers, system, HANDLES - 1)) - of(pair(plan, known, answers, system, 0))
        };
        (ends(|pair| pair.0), ends(|pair| pair.1))
    };
    let turn = |slope: f64| if slope.abs() <= NEAR { 0 } else { slope.total_cmp(&0.0) as i8 };
    match (near, turn(guess_slope) == turn(true_slope)) {
        (HANDLES, _) => "All nine are close. You have seen this before.".into(),
        (5.., _) => format!("{near} of nine are close: the shape is yours."),
        (_, true) => {
            format!("{near} of nine are close. The way it goes is right, and that is the main thing.")
        }
        (_, false) => format!(
            "{near} of nine are close, and it goes another way than most people think. That is why this is a lesson."
        ),
    }
}

fn table(plan: &Plan, known: &Studied, answers: &Answers, system: System) -> Block {
    let end = axis_end(plan, known, system);
    let rows = (0..HANDLES).rev().map(|at| {
        let (guess, truth) = pair(plan, known, answers, system, at);
        let off = guess - truth;
        let words = if !answers.guessed {
            ""
        } else if off.abs() <= NEAR {
            "close"
        } else if off > 0.0 {
            "less"
        } else {
            "more"
        };
        vec![
            Cell::number(Amount::Size(handle_height(known, at)).text(system)),
            Cell::number(if answers.guessed { plan.unit.amount(guess * end, system) } else { "–".into() }),
            Cell::StrongNumber(plan.unit.amount(truth * end, system)),
            Cell::words(words),
        ]
    });
    Block::Table(Table {
        caption: plan.sought.0.into(),
        head: ["Deck at", "your guess", "it is", ""].map(String::from).to_vec(),
        rows: rows.collect(),
        foot: Vec::new(),
    })
}

/// The explanation with its rule and where that comes from.
pub(super) fn why(plan: &Plan, known: &Studied, system: System) -> Vec<Block> {
    let mut blocks = (plan.why)(known, system);
    blocks.extend(freed(plan, known, system));
    blocks.push(Block::Text(Text::default().formula(plan.formula)));
    blocks.push(Block::note(plan.source));
    blocks
}

/// The part that matters, cut free: the deck at its highest, where an overhang is worst, all others at the lowest, where forces are greatest.
fn freed(plan: &Plan, known: &Studied, system: System) -> Option<Block> {
    let report = known.first()?;
    let part = Freed::of(plan.part, report.mechanism().n)?;
    let (height, end) =
        if part == Freed::Deck { (report.highest(), "highest") } else { (report.lowest(), "lowest") };
    let station = report.at(height);
    let mut figure = cut_free(report, part, Doing::Standing, &station, FREED, system);
    figure.caption =
        format!("The {}, cut free with the deck at its {end}. The forces cancel.", part_words(part)).into();
    Some(Block::Figure(figure))
}

fn closing(plan: &Plan, answers: &Answers) -> Vec<Block> {
    let closing = &plan.closing;
    let acts = closing.choices.iter().enumerate().map(|(at, words)| Act::Answer {
        words: (*words).into(),
        key: "ask".into(),
        value: at.to_string(),
        pressed: Some(answers.choice == Some(at)),
    });
    let mut blocks = vec![Block::heading("One more"), Block::text(closing.ask), Block::Acts(acts.collect())];
    if let Some(choice) = answers.choice {
        let verdict = if choice == closing.right { "Yes. " } else { "Not quite. " };
        blocks.push(Block::Text(Text::default().strong(verdict).words(closing.told)));
    }
    blocks
}

fn ways(now: Lesson) -> Block {
    let near = |at: usize, words: &str| {
        Lesson::ALL
            .get(at)
            .map(|lesson| Act::View { words: format!("{words}: {}", lesson.title()), view: lesson.word() })
    };
    let mut acts = vec![Act::View { words: "All lessons".into(), view: View::Lessons.word() }];
    acts.extend(now.number().checked_sub(2).and_then(|at| near(at, "Before")));
    acts.extend(near(now.number(), "Next"));
    acts.push(Act::Print { words: "Print a worksheet".into() });
    Block::Group("lesson-ways", vec![Block::Acts(acts)])
}
