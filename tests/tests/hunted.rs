//! Whatever comes from elsewhere is an enemy's: links, files, numbers, mechanisms and designs made of random bytes. Ten thousand cases each; the fuzz
//! targets of `tests/fuzz` do the same for hours, and what they find stands in `tests/reference/hostile`.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

#[path = "../hunt/mod.rs"]
mod hunt;
mod odd;

use hunt::model::hunt_model;
use hunt::{hunt_design, hunt_file, hunt_link, hunt_quantity};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use risewright::checks::MOST;
use risewright::design::{Demo, Design};
use risewright::report::{Report, Station, analyse};
use risewright::share::file::{Kept, write};
use risewright::share::link;
use std::path::PathBuf;
use std::time::{Duration, Instant};

const CASES: u32 = 10_000;

fn config() -> ProptestConfig {
    let cases = ProptestConfig::default().cases.max(CASES);
    ProptestConfig { cases, failure_persistence: None, ..ProptestConfig::default() }
}

fn reference(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("reference").join(name)
}

/// Bytes that mean something, with some of them changed, taken out or put in.
fn damaged(whole: Vec<Vec<u8>>) -> impl Strategy<Value = Vec<u8>> {
    let edit = (any::<prop::sample::Index>(), 0..4_u8, any::<u8>());
    (prop::sample::select(whole), prop::collection::vec(edit, 0..6)).prop_map(|(mut bytes, edits)| {
        for (place, what, byte) in edits {
            let at = place.index(bytes.len().max(1)).min(bytes.len());
            match what {
                0 => bytes.insert(at, byte),
                1 => bytes.insert(at, b"{}[]\",:.-~%0"[usize::from(byte) % 12]),
                2 if at < bytes.len() => bytes[at] = byte,
                _ => bytes.truncate(bytes.len() - bytes.len().min(usize::from(byte) / 8)),
            }
        }
        bytes
    })
}

fn links() -> Vec<Vec<u8>> {
    let table = std::fs::read_to_string(reference("frozen/links.csv")).unwrap();
    let links = table.lines().skip(1).map(|line| line.rsplit(',').next().unwrap().to_owned());
    links.flat_map(|link| [format!("#1/elevation,at4k,bare/{link}"), link]).map(String::into_bytes).collect()
}

/// Short ones: they leave more cases for what matters.
fn files() -> Vec<Vec<u8>> {
    let whole = write(&Demo::PottingBench.design(), &Kept::default());
    let short = ["by-hand.json", "later-members.json"]
        .map(|name| std::fs::read(reference("frozen/files").join(name)).unwrap());
    let shelf = r#"{"format":"risewright shelf","version":1,"designs":[{"name":"a","inputs":{"al":600}},{"name":"b","inputs":{"xx":[1]}}]}"#;
    short.into_iter().chain([whole.into_bytes(), shelf.as_bytes().to_vec()]).collect()
}

fn models() -> Vec<Vec<u8>> {
    ["01_n1_base_ideal", "08_n1_strut_base_arm"]
        .map(|name| {
            let case: serde_json::Value = serde_json::from_slice(
                &std::fs::read(reference("cases").join(format!("{name}.json"))).unwrap(),
            )
            .unwrap();
            case["input"].to_string().into_bytes()
        })
        .into()
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn links_of_any_bytes(bytes in prop_oneof![damaged(links()), prop::collection::vec(any::<u8>(), 0..80)]) {
        hunt_link(&bytes);
    }

    #[test]
    fn files_of_any_bytes(bytes in prop_oneof![3 => damaged(files()), 1 => prop::collection::vec(any::<u8>(), 0..80)]) {
        hunt_file(&bytes);
    }

    #[test]
    fn numbers_of_any_signs(pick in any::<u8>(), text in prop_oneof!["\\PC{0,12}", "[-+0-9 .,/'\"eE½¾a-z]{0,14}"]) {
        hunt_quantity(&[&[pick], text.as_bytes()].concat());
    }

    #[test]
    fn mechanisms_of_any_bytes(bytes in prop_oneof![damaged(models()), prop::collection::vec(any::<u8>(), 0..60)]) {
        hunt_model(&bytes);
    }

    #[test]
    fn designs_of_any_bytes(bytes in prop::collection::vec(any::<u8>(), 0..120)) {
        hunt_design(&bytes);
    }
}

/// What is missing or endless in a report, of its stations, parts, findings with their remedies and checks, all of each written out.
fn missing(report: &Report, stations: &[Station]) -> Option<&'static str> {
    let remedies: Vec<_> = report.findings.iter().map(|finding| report.remedy(finding)).collect();
    let mut text = format!("{stations:?} {:?} {:?} {remedies:?}", report.parts, report.findings);
    for check in &report.checks {
        text += &format!("{:?} {:?} {:?}", check.capacity, check.curve, check.numbers);
        // A bar that is bored through whole has no section left: its stress is endless, and its ratio the greatest there is.
        if check.ratio < MOST {
            text += &format!("{:?}", check.demand);
        } else {
            text = text.replace("Stress(inf)", "");
        }
    }
    ["NaN", "inf,", "inf)", "inf ", "inf]"].into_iter().find(|word| text.contains(word))
}

/// No number anywhere in a report is missing or endless: of random designs at one height each, of those that are known to be odd at all.
#[test]
fn nothing_in_a_report_is_missing() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut stood = 0;
    for _ in 0..1500 {
        let bytes = prop::collection::vec(any::<u8>(), 0..60).new_tree(&mut runner).unwrap().current();
        if let Some(report) = hunt_design(&bytes) {
            stood += 1;
            let one = stood % report.stations.len();
            assert_eq!(
                missing(&report, &report.stations[one..=one]),
                None,
                "{}",
                link::encode(&report.design)
            );
        }
    }
    assert!(stood > 300, "only {stood} designs stood");
    for (name, design) in odd::designs() {
        let report = analyse(&design).unwrap_or_else(|_| panic!("{name} does not stand"));
        assert_eq!(missing(&report, &report.stations), None, "{name}");
    }
}

/// No analysis takes longer than 50 ms where the solver is optimised; the best of three runs, so that another program on the machine does not count.
#[test]
fn no_analysis_is_slow() {
    const LONGEST: Duration = Duration::from_millis(50);
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    for _ in 0..400 {
        let bytes = prop::collection::vec(any::<u8>(), 0..100).new_tree(&mut runner).unwrap().current();
        let design = hunt::design(&bytes);
        let time = || {
            let start = Instant::now();
            let _ = analyse(&design);
            start.elapsed()
        };
        let best = [time(), time(), time()].into_iter().min().unwrap();
        assert!(best < LONGEST, "{best:?}: {}", link::encode(&design));
    }
}

/// What fuzzing found, each once the cause of a failure: the file's name begins with the hunt.
#[test]
fn what_was_caught_stays_caught() {
    for entry in std::fs::read_dir(reference("hostile")).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let bytes = std::fs::read(&path).unwrap();
        match name.split('-').next().unwrap() {
            "link" => hunt_link(&bytes),
            "file" => hunt_file(&bytes),
            "quantity" => hunt_quantity(&bytes),
            "model" => drop(hunt_model(&bytes)),
            "analyse" => drop(hunt_design(&bytes)),
            "README.md" => {}
            other => panic!("{name}: no hunt is called {other}"),
        }
    }
}

/// The hunts would see something: a design that stands, and one that does not.
#[test]
fn bytes_make_designs_of_both_sorts() {
    assert_eq!(hunt::design(&[]), Design::default());
    assert!(hunt_design(&[]).is_some());
    let mut bytes = vec![1_u8];
    for field in 0..30_u8 {
        bytes.extend([field, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0]);
    }
    assert!(hunt_design(&bytes).is_none());
    // And a mechanism that moves, and one whose first number, its arms' length, is 0.
    assert!(hunt_model(&[0]));
    assert!(!hunt_model(&[0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0]));
}
