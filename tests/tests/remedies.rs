//! What a remedy names is enough: take its figure as it is shown, in millimetres or inches, enter it, and the finding is gone.
#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at the first surprise")]

mod odd;

use risewright::design::{Demo, Design};
use risewright::quantity::{Kind, Length, System, read};
use risewright::report::{Finding, Report, analyse, reach};

/// A remedy that names a size: the words before and behind it, and what is done with it.
struct Remedy {
    before: &'static str,
    behind: &'static str,
    done: fn(&mut Design, Length),
}

const fn remedy(before: &'static str, behind: &'static str, done: fn(&mut Design, Length)) -> Remedy {
    Remedy { before, behind, done }
}

const REMEDIES: [Remedy; 7] = [
    remedy("Take one of ", " at least", |d, size| d.drive.screw_length = size),
    remedy("or take a lead of ", " or less", |d, size| {
        d.drive.lead = size;
        d.drive.pitch = d.drive.pitch.min(size);
    }),
    remedy("Raise the deck above its pins by ", ",", |d, size| d.lift.deck_stack += size),
    remedy("Raise the base pin line by ", ",", |d, size| d.lift.pin_line += size),
    remedy("Make the base beams longer by ", ",", |d, size| d.frames.base_length += size),
    remedy("Make the deck rails longer by ", ",", |d, size| d.frames.deck_rail_length += size),
    remedy("A highest deck of ", " keeps the arms", |d, size| d.lift.highest = size),
];

impl Remedy {
    /// The size it names in a text; none where the text names none of its kind.
    fn size(&self, text: &str, system: System) -> Option<Length> {
        let (_, rest) = text.split_once(self.before)?;
        let (shown, _) = rest.split_once(self.behind)?;
        Some(Length::from_steps(read(shown, Kind::Length, system).unwrap()))
    }
}

/// Both demos and the odd designs, each with one input after the other a little off.
fn designs() -> Vec<Design> {
    const OFF: [f64; 4] = [0.8, 0.937, 1.017, 1.13];
    const KEYS: [&str; 10] = ["sn", "sl", "dh", "pl", "bl", "rl", "hi", "ae", "wd", "mt"];
    let own: Vec<Design> = Demo::ALL
        .into_iter()
        .map(Demo::design)
        .chain(odd::designs().into_iter().map(|(_, design)| design))
        .collect();
    let mut all = own.clone();
    for design in &own {
        for field in Design::fields().filter(|field| KEYS.contains(&field.key)) {
            for off in OFF {
                let mut changed = design.clone();
                let steps = Length::from_steps(field.get(design)).to_mm() * off;
                field.set(&mut changed, field.nearest(Length::mm(steps).steps()));
                all.push(changed);
            }
        }
    }
    all
}

/// The findings of a report that name a remedy's size, with the remedy's text.
fn named<'a>(report: &'a Report, remedy: &'a Remedy) -> impl Iterator<Item = (&'a Finding, String)> {
    report.faults().filter_map(move |finding| {
        let text = finding.remedy.as_ref()?.text(System::Metric);
        text.contains(remedy.before).then_some((finding, text))
    })
}

#[test]
fn what_a_remedy_names_is_enough() {
    let mut tried = [0; REMEDIES.len()];
    for design in designs() {
        let Ok(report) = analyse(&design) else { continue };
        for (remedy, tried) in REMEDIES.iter().zip(&mut tried) {
            for (finding, _) in named(&report, remedy) {
                for system in [System::Metric, System::Inch] {
                    let text = finding.remedy.as_ref().unwrap().text(system);
                    let Some(size) = remedy.size(&text, system) else { continue };
                    let mut mended = design.clone();
                    (remedy.done)(&mut mended, size);
                    let Ok(after) = analyse(&mended) else { continue };
                    *tried += 1;
                    let left = named(&after, remedy).next();
                    assert!(
                        left.is_none(),
                        "{}\n{text}\nand then\n{:?}",
                        finding.phrase.text(system),
                        left.map(|(left, text)| left.phrase.text(system) + " " + &text)
                    );
                }
            }
        }
    }
    for (remedy, tried) in REMEDIES.iter().zip(tried) {
        assert!(tried > 0, "no design came with “{}”", remedy.before);
    }
}

/// The examples of which one was told too little: a screw that needs 631.08 mm, beams 12.08 mm too short, a lead that must not pass 4.57 mm.
#[test]
fn a_size_is_rounded_to_the_safe_side() {
    let told = |key: &str, millimetres: f64, opening: &str, system: System| {
        let mut design = Demo::PaperLift.design();
        let field = Design::fields().find(|field| field.key == key).unwrap();
        field.set(&mut design, Length::mm(millimetres).steps());
        let report = analyse(&design).unwrap();
        let finding = report.faults().find(|finding| finding.phrase.opening().starts_with(opening)).unwrap();
        finding.remedy.as_ref().unwrap().text(system).replace('\u{a0}', " ")
    };
    for (key, millimetres, opening, metric, inch) in [
        ("sn", 620.0, "The screw is", "632 mm at least", "24 7/8 in at least"),
        ("sl", 6.0, "The screw holds", "a lead of 4.5 mm or less", "a lead of 0.179 in or less"),
        ("bl", 670.0, "The wheels run off", "longer by 13 mm", "longer by 1/2 in"),
    ] {
        for (system, wanted) in [(System::Metric, metric), (System::Inch, inch)] {
            let text = told(key, millimetres, opening, system);
            assert!(text.contains(wanted), "{text}");
        }
    }
}

/// The crank's remedies are tried where the design rests: each keeps to the limit as it is shown.
#[test]
fn a_crank_that_is_told_keeps_to_its_limit() {
    let mut tried = 0;
    for limit in [40.0, 55.0, 70.0, 90.0] {
        for demo in Demo::ALL {
            let mut design = demo.design();
            design.drive.crank_limit = risewright::quantity::Force::n(limit);
            let report = analyse(&design).unwrap();
            let crank = |finding: &&Finding| finding.phrase.opening().starts_with("Crank");
            let Some(finding) = report.faults().find(crank) else { continue };
            let Some(phrase) = report.remedy(finding) else { continue };
            for system in [System::Metric, System::Inch] {
                let text = phrase.text(system).replace("so does a crank", "A crank").replace('.', " keeps");
                for remedy in [
                    remedy("A lowest deck of ", " keeps", |d, size| d.lift.lowest = size),
                    remedy("A crank of ", " keeps", |d, size| d.drive.crank = size),
                ] {
                    let Some(size) = remedy.size(&text, system) else { continue };
                    let mut mended = design.clone();
                    (remedy.done)(&mut mended, size);
                    let grade = analyse(&mended).unwrap().findings.iter().find(crank).unwrap().grade;
                    assert!(grade > finding.grade, "{text}");
                    tried += 1;
                }
            }
        }
    }
    assert!(tried > 4);
}

/// What bounds the lift is told so that it can be entered.
#[test]
fn a_deck_as_low_as_is_told_can_be_had() {
    for design in Demo::ALL.into_iter().map(Demo::design) {
        let mut lower = design.clone();
        lower.lift.lowest = Length::mm(60.0);
        let obstacle = reach(&lower).unwrap_err();
        for system in [System::Metric, System::Inch] {
            let told = remedy("The deck comes down to ", ",", |d, size| d.lift.lowest = size);
            let size = told.size(&obstacle.phrase.text(system), system).unwrap();
            (told.done)(&mut lower, size);
            // Something else, as a screw at its dead point, may still forbid it.
            let left = reach(&lower).err().map(|left| left.phrase.text(system)).unwrap_or_default();
            assert!(!left.starts_with(told.before), "{left}");
        }
    }
}
