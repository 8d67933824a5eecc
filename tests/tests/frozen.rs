//! Links and files that were written once open for ever, as the same design. `tests/reference/frozen` is only ever added to.
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

use risewright::design::Design;
use risewright::quantity::MOST_STEPS;
use risewright::share::file::{
    self, Found, KEPT_LIMIT, Kept, MOST_DESIGNS, VERSIONS, read, write, write_shelf,
};
use risewright::share::{address, digest, link};
use std::collections::BTreeSet;
use std::path::PathBuf;

/// Each version is represented by at least so many.
const LEAST: usize = 20;

fn folder() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("reference/frozen")
}

fn text(name: &str) -> String {
    std::fs::read_to_string(folder().join(name)).unwrap()
}

/// The lines of a table without its head, each cut at its first commas.
fn rows(name: &str, columns: usize) -> Vec<Vec<String>> {
    text(name).lines().skip(1).map(|line| line.splitn(columns, ',').map(str::to_owned).collect()).collect()
}

#[test]
fn frozen_links_open_as_what_they_were() {
    let rows = rows("links.csv", 3);
    assert!(rows.len() >= LEAST);
    let mut versions = BTreeSet::new();
    for row in rows {
        let [name, frozen, text] = row.as_slice() else { panic!("{row:?}") };
        let (version, text) = text.split_once('/').unwrap_or((link::VERSION, text));
        versions.insert(version.to_owned());
        let design = link::decode(text).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        assert_eq!(digest(&design), *frozen, "{name}");
        let opened = address::read(&format!("#{version}/strength/{text}")).unwrap().unwrap();
        assert_eq!(opened.design, Some(design), "{name}");
    }
    // A version that is written has specimens here.
    assert!(versions.contains(link::VERSION));
}

fn designs(found: Found) -> Vec<file::Opened> {
    match found {
        Found::Design(opened) => vec![*opened],
        Found::Shelf(opened, faults) => {
            assert_eq!(faults, []);
            opened
        }
    }
}

#[test]
fn frozen_files_open_as_what_they_were() {
    let rows = rows("files.csv", 2);
    assert!(rows.len() >= LEAST);
    let listed: BTreeSet<String> = rows.iter().map(|row| row[0].clone()).collect();
    let there: BTreeSet<String> = std::fs::read_dir(folder().join("files"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_eq!(listed, there, "every file stands in the table and the other way round");
    let mut versions = BTreeSet::new();
    for row in rows {
        let [name, frozen] = row.as_slice() else { panic!("{row:?}") };
        let text = text(&format!("files/{name}"));
        let whole: serde_json::Value = serde_json::from_str(&text).unwrap();
        versions.insert(whole["version"].as_u64().unwrap());
        let opened = designs(read(&text).unwrap_or_else(|fault| panic!("{name}: {fault}")));
        let digests: Vec<String> = opened.iter().map(|opened| digest(&opened.design)).collect();
        assert_eq!(digests.join(" "), *frozen, "{name}");
    }
    // There is one version so far, and so nothing to migrate. Whoever adds one must freeze files of it, or this fails.
    assert_eq!(versions, VERSIONS.into_iter().collect(), "every version that is read has files here");
}

#[test]
fn members_of_a_later_version_are_written_again() {
    let Found::Design(opened) = read(&text("files/later-members.json")).unwrap() else { panic!("a shelf") };
    let kept = Kept::of(&opened.kept.text());
    assert_eq!(kept, opened.kept);
    let again: serde_json::Value = serde_json::from_str(&write(&opened.design, &kept)).unwrap();
    assert_eq!(again["author"]["of"][0], "a member");
    assert_eq!(again["inputs"]["qq"]["value"], 7);
    assert_eq!(again["inputs"]["al"]["value"], 600);
    assert_eq!(again["inputs"]["al"]["tolerance"], 0.1);
    assert!(matches!(read(&again.to_string()), Ok(Found::Design(same)) if same == opened));
}

/// What an older version kept of a file may have a meaning by now: it does not stand twice in the file that is written.
#[test]
fn what_is_known_by_now_is_not_kept() {
    let kept = Kept::of(
        r#"{"members":{"name":"b","format":"x","later":1},"inputs":{"al":5,"qq":7},"within":{"al":{"value":5,"tolerance":2},"qq":{"x":1},"lo":3}}"#,
    );
    let Ok(Found::Design(opened)) = read(&write(&Design::default(), &kept)) else {
        panic!("no file of ours")
    };
    assert_eq!((&opened.design, &opened.kept), (&Design::default(), &kept));
    let again: serde_json::Value = serde_json::from_str(&kept.text()).unwrap();
    let left = r#"{"members":{"later":1},"inputs":{"qq":7},"within":{"al":{"tolerance":2}}}"#;
    assert_eq!(again, serde_json::from_str::<serde_json::Value>(left).unwrap());
    // Too much of it, or too deep, is let go, so that every shelf can be read again.
    let member = |value: &str| Kept::of(&format!(r#"{{"members":{{"later":{value}}}}}"#));
    assert_ne!(member(&format!("{}{}", "[".repeat(8), "]".repeat(8))), Kept::default());
    assert_eq!(member(&format!("{}{}", "[".repeat(9), "]".repeat(9))), Kept::default());
    assert_eq!(member(&format!("\"{}\"", "x".repeat(KEPT_LIMIT))), Kept::default());
}

/// Design files put into a shelf by hand keep none of their heads.
#[test]
fn files_can_be_put_into_a_shelf_by_hand() {
    let one = text("files/paper-lift.json");
    let shelf = format!(r#"{{"format":"risewright shelf","version":1,"designs":[{one},{one}]}}"#);
    let opened = designs(read(&shelf).unwrap());
    assert_eq!(opened.len(), 2);
    for one in opened {
        assert_eq!(one.kept, Kept::default());
        assert!(matches!(read(&write(&one.design, &one.kept)), Ok(Found::Design(same)) if *same == one));
    }
}

/// The most designs, each with the longest values, the longest name and the most that is kept.
#[test]
fn the_fullest_shelf_can_be_read() {
    let mut design = Design::default();
    design.rename(&"\u{1F6E0}".repeat(60));
    for field in Design::fields() {
        let longest =
            if field.choices.is_empty() { 1 - MOST_STEPS } else { field.choices[field.choices.len() - 1].0 };
        field.set(&mut design, longest);
    }
    let kept = (1..KEPT_LIMIT)
        .rev()
        .map(|length| Kept::of(&format!(r#"{{"members":{{"later":"{}"}}}}"#, "x".repeat(length))))
        .find(|kept| *kept != Kept::default());
    let shelf = write_shelf(&vec![(design, kept.unwrap()); MOST_DESIGNS]);
    assert!(shelf.len() <= file::READ_LIMIT, "{} bytes", shelf.len());
    assert_eq!(designs(read(&shelf).unwrap()).len(), MOST_DESIGNS);
}

#[test]
fn what_is_no_file_of_ours_is_refused_in_its_own_sentence() {
    let design = |inputs: &str| {
        format!(r#"{{"format":"risewright design","version":1,"name":"x","inputs":{{{inputs}}}}}"#)
    };
    let deep = format!("{}{}", "[".repeat(40), "]".repeat(40));
    let cases = [
        (String::new(), "no JSON"),
        ("{".to_owned(), "line 1, column 1"),
        ("{\n\"format\": risewright}".to_owned(), "line 2"),
        (deep, "deep"),
        ("[]".to_owned(), "not a file of this program"),
        ("{\"version\": 1}".to_owned(), "not a file of this program"),
        (r#"{"format":"drawing","version":1}"#.to_owned(), "not a file of this program"),
        (r#"{"format":"risewright design"}"#.to_owned(), "“version” must be a whole number"),
        (r#"{"format":"risewright design","version":"1"}"#.to_owned(), "“version”"),
        (r#"{"format":"risewright design","version":0}"#.to_owned(), "a whole number from 1 on"),
        (r#"{"format":"risewright design","version":2,"name":"x","inputs":{}}"#.to_owned(), "newer version"),
        (r#"{"format":"risewright design","version":1,"inputs":{}}"#.to_owned(), "“name” must be a text"),
        (r#"{"format":"risewright design","version":1,"name":"x"}"#.to_owned(), "“inputs”"),
        (r#"{"format":"risewright shelf","version":1}"#.to_owned(), "a list of designs"),
        (design(r#""al":1,"al":2"#), "“al” stands twice"),
        (design(r#""al":{"value":20,"unit":"in"}"#), "its unit is mm"),
        (design(r#""st":{"value":2,"unit":"mm"}"#), "it has none"),
        (design(r#""al":{"unit":"mm"}"#), "must be given"),
        (design(r#""al":true"#), "must be a number"),
        (design(r#""sa":1"#), "true or false"),
        (design(r#""dr":"far""#), "the number of a choice"),
        (design(r#""al":"twenty""#), "cannot be read"),
        (design(r#""al":1e300"#), "beyond all measure"),
        (design(r#""st":2.4"#), "“2.4” is not a whole number"),
        (design(r#""dr":1.5"#), "is not a whole number"),
        (design(r#""dr":9"#), "is choice 9, which this version does not have"),
        (design("").replace("\"x\"", &format!("\"{}\"", "x".repeat(61))), "the name has 61 characters"),
        (design("").replace("\"x\"", &format!("\"{}\"", "\u{1F6E0}".repeat(40))), "120 bytes"),
    ];
    let mut sentences = BTreeSet::new();
    for (text, part) in cases {
        let fault = read(&text).expect_err(&text).to_string();
        assert!(fault.contains(part) && fault.ends_with('.'), "{text}: {fault}");
        sentences.insert(fault);
    }
    assert!(sentences.len() >= 24, "one sentence each");
    assert_eq!(read(&" ".repeat(file::READ_LIMIT + 1)), Err(file::FileFault::TooLong));
    let many = format!(r#"{{"format":"risewright shelf","version":1,"designs":[{}0]}}"#, "0,".repeat(500));
    assert_eq!(read(&many), Err(file::FileFault::TooMany(501)));
}

#[test]
fn a_damaged_design_does_not_take_the_shelf_with_it() {
    let text = text("files/shelf.json").replacen("\"name\"", "\"nome\"", 1);
    let Ok(Found::Shelf(opened, faults)) = read(&text) else { panic!("no shelf") };
    assert_eq!((opened.len(), faults.len()), (2, 1));
}

/// JSON Schema (draft 2020-12) as far as these files use it, judged by plain reading of the schema: the types and required members.
#[test]
fn the_schema_names_every_input_with_its_unit() {
    let schema = file::schema();
    let inputs = schema["$defs"]["design"]["properties"]["inputs"]["properties"].as_object().unwrap();
    let whole = write(&Design::default(), &Kept::default());
    let whole: serde_json::Value = serde_json::from_str(&whole).unwrap();
    let written = whole["inputs"].as_object().unwrap();
    assert_eq!(inputs.keys().collect::<BTreeSet<_>>(), written.keys().collect::<BTreeSet<_>>());
    for (key, member) in written {
        let unit = &inputs[key]["anyOf"][1]["properties"]["unit"]["const"];
        assert_eq!(member["unit"].as_str().unwrap_or_default(), unit, "{key}");
        assert_eq!(member["of"], inputs[key]["title"], "{key}");
    }
}
