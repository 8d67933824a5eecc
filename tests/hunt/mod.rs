//! What must hold for any bytes whatever, as functions that panic where it does not: for the property tests of `tests/tests/hunted.rs`, which
//! run with every change, and for the fuzz targets of `tests/fuzz`, which run for hours.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::cast_possible_truncation,
    dead_code,
    reason = "a hunt stops at the first surprise; not every hunter has every prey"
)]

#[path = "../../core/examples/solve/answer.rs"]
pub mod answer;
pub mod model;

use risewright::design::{Demo, Design, Field};
use risewright::quantity::{Kind, MOST_STEPS, System, read as read_quantity};
use risewright::report::{Report, analyse};
use risewright::share::file::{self, Found};
use risewright::share::{address, digest, link};

/// A link, or what stands behind the `#` of an address: opened to what is written as the same again, or refused in a sentence.
pub fn hunt_link(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match link::decode(&text) {
        Ok(design) => {
            well_named(&design);
            let written = link::encode(&design);
            assert_eq!(link::decode(&written).as_ref(), Ok(&design), "{text:?}");
        }
        Err(fault) => reply(&fault.to_string(), &text),
    }
    match address::read(&text) {
        Ok(None) => assert!(text.is_empty() || text == "#"),
        Ok(Some(opened)) => {
            if let Some(design) = &opened.design {
                let written = address::write_in(opened.view, &opened.manner, design);
                assert_eq!(address::read(&written), Ok(Some(opened)), "{text:?}");
            }
        }
        Err(fault) => reply(&fault.to_string(), &text),
    }
}

/// A file: its designs are written as files, as a shelf and as links that give them back, with what was kept.
pub fn hunt_file(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let opened = match file::read(&text) {
        Ok(Found::Design(opened)) => vec![*opened],
        Ok(Found::Shelf(opened, faults)) => {
            faults.iter().for_each(|fault| reply(&fault.to_string(), &text));
            opened
        }
        Err(fault) => return reply(&fault.to_string(), &text),
    };
    let shelf: Vec<_> = opened.iter().map(|one| (one.design.clone(), one.kept.clone())).collect();
    assert_eq!(file::read(&file::write_shelf(&shelf)), Ok(Found::Shelf(opened.clone(), Vec::new())));
    for one in opened {
        well_named(&one.design);
        assert_eq!(link::decode(&link::encode(&one.design)).as_ref(), Ok(&one.design));
        let kept = file::Kept::of(&one.kept.text());
        assert_eq!(kept, one.kept);
        let again = file::read(&file::write(&one.design, &kept));
        let Ok(Found::Design(again)) = again else { panic!("{again:?}") };
        assert_eq!(digest(&again.design), digest(&one.design));
        assert_eq!(*again, one);
    }
}

/// What is written into a field: the first byte picks kind and units. Read to a number of steps within bounds, or refused in a sentence whose offers
/// can be read.
pub fn hunt_quantity(bytes: &[u8]) {
    let Some((pick, rest)) = bytes.split_first() else { return };
    let kind = KINDS[usize::from(pick / 2) % KINDS.len()];
    let system = if pick % 2 == 0 { System::Metric } else { System::Inch };
    let text = String::from_utf8_lossy(rest);
    match read_quantity(&text, kind, system) {
        Ok(steps) => assert!(steps.abs() <= MOST_STEPS, "{text:?} is {steps} steps"),
        Err(fault) => {
            reply(&fault.to_string(), &text);
            for (offer, steps) in fault.offers() {
                assert_eq!(
                    read_quantity(&offer, kind, system),
                    Ok(steps),
                    "{offer:?} is offered for {text:?}"
                );
            }
        }
    }
}

const KINDS: [Kind; 14] = [
    Kind::Length,
    Kind::Mass,
    Kind::Force,
    Kind::Ratio,
    Kind::Stress,
    Kind::Density,
    Kind::Pace,
    Kind::Count,
    Kind::Money,
    Kind::Rate,
    Kind::Angle,
    Kind::Stiffness,
    Kind::Choice,
    Kind::Switch,
];

/// A design, made of the bytes, and analysed. Returns the report of one that stands.
pub fn hunt_design(bytes: &[u8]) -> Option<Report> {
    match analyse(&design(bytes)) {
        Ok(report) => {
            for figure in report.figures() {
                assert!(figure.is_finite(), "{}", link::encode(&report.design));
            }
            for finding in &report.findings {
                for phrase in [Some(finding.phrase.clone()), report.remedy(finding)].into_iter().flatten() {
                    for system in [System::Metric, System::Inch] {
                        sentence(&phrase.text(system));
                    }
                }
            }
            Some(report)
        }
        Err(unsound) => {
            let phrases = unsound.phrases();
            assert!(!phrases.is_empty());
            phrases.iter().for_each(|phrase| sentence(&phrase.text(System::Inch)));
            None
        }
    }
}

/// Bytes as a design: a demo with some inputs changed. Twelve bytes a change: which input, how its value is meant, the value. Most changes are small,
/// so that many designs stand; some are ends of ranges, some lie far beyond them.
pub fn design(bytes: &[u8]) -> Design {
    let fields: Vec<&'static Field> = Design::fields().collect();
    let (first, rest) = bytes.split_first().unwrap_or((&0, &[]));
    let mut design = Demo::ALL[usize::from(*first) % Demo::ALL.len()].design();
    for change in rest.chunks_exact(11).take(40) {
        let field = fields[usize::from(u16::from_le_bytes([change[0], change[1]])) % fields.len()];
        let value = i64::from_le_bytes(change[3..11].try_into().unwrap());
        let (low, high) = field.range;
        let span = (high - low).unsigned_abs().max(1);
        let within = |value: u64| low + i64::try_from(value % (span + 1)).unwrap();
        let steps = match change[2] % 8 {
            0 => value,
            1 => low,
            2 => high,
            3 => within(value.unsigned_abs()),
            _ => {
                // Within a sixteenth of the range from where it is.
                let near = i64::try_from(value.unsigned_abs() % (span / 16 + 1)).unwrap();
                (field.get(&design) + near - i64::try_from(span / 32).unwrap()).clamp(low, high)
            }
        };
        let choice = usize::try_from(value.unsigned_abs() % 64).unwrap();
        let steps = field.choices.get(choice % field.choices.len().max(1)).map_or(steps, |(steps, _)| *steps);
        field.set(&mut design, steps);
    }
    design
}

fn well_named(design: &Design) {
    let mut same = design.clone();
    same.rename(&design.name);
    assert_eq!(same.name, design.name, "a name keeps to its limits");
}

/// A sentence about what somebody wrote, which it may quote.
fn reply(text: &str, about: &str) {
    let about: String = about.chars().filter(|sign| sign.is_ascii_alphabetic()).collect();
    if ["nan", "inf"].iter().any(|word| about.to_ascii_lowercase().contains(word)) {
        assert!(text.ends_with('.'), "{text}");
    } else {
        sentence(text);
    }
}

fn sentence(text: &str) {
    assert!(text.ends_with('.') && !text.contains("NaN") && !text.contains(" inf"), "{text}");
}
