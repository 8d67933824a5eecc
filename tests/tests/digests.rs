//! Six designs have the digests of `tests/digests.md`, on this machine; `tests/browser/digests.mjs` asks the same of the page's WASM module.
//! A change of the mechanics changes them: it then writes its reason there.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

mod odd;

use risewright::design::{Demo, Design};
use risewright::report::analyse;
use std::collections::BTreeMap;

const RECORD: &str = include_str!("../digests.md");

/// The odd designs besides the two demos.
const ODD: [&str; 4] = ["four", "strut", "pivots", "arm to arm"];

fn designs() -> Vec<(String, Design)> {
    let demos = Demo::ALL.map(|demo| (demo.letter().to_string(), demo.design()));
    let odd = odd::designs().into_iter().filter(|(name, _)| ODD.contains(&name.as_str()));
    demos.into_iter().chain(odd).collect()
}

/// The last line of each design in the table: digest and reason.
fn recorded() -> BTreeMap<&'static str, (&'static str, &'static str)> {
    RECORD
        .lines()
        .filter_map(|line| line.strip_prefix("| ")?.strip_suffix(" |"))
        .filter_map(|line| {
            let mut cells = line.split(" | ");
            let (name, digest, _date, reason) = (cells.next()?, cells.next()?, cells.next()?, cells.next()?);
            (digest.len() == 16 && digest.bytes().all(|sign| sign.is_ascii_hexdigit()))
                .then_some((name, (digest, reason)))
        })
        .collect()
}

#[test]
fn six_designs_have_their_recorded_digests() {
    let recorded = recorded();
    let designs = designs();
    assert_eq!(designs.len(), 6);
    let mut changed = Vec::new();
    for (name, design) in designs {
        let digest = analyse(&design).unwrap().digest();
        match recorded.get(name.as_str()) {
            Some((known, reason)) if *known == digest => assert!(reason.len() > 9, "{name}: no reason"),
            _ => changed.push(format!("| {name} | {digest} | (date) | (reason) |")),
        }
    }
    assert!(changed.is_empty(), "add to tests/digests.md, with the reason:\n{}", changed.join("\n"));
}

/// A digest of figures that hardly differ differs.
#[test]
fn a_small_change_is_seen() {
    let design = Design::default();
    let mut other = design.clone();
    let field = Design::field("lm").unwrap();
    field.set(&mut other, field.get(&design) + 1000);
    let [one, two] = [&design, &other].map(|design| analyse(design).unwrap().digest());
    assert_ne!(one, two, "a hundredth of a gram on the deck");
}
