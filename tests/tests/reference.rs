//! Whole mechanisms against an independent solver.
//!
//! Source of every expected figure: independent reference solver, unpublished (tests/reference/cases).
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test stops at the first surprise")]

#[path = "../../core/examples/solve/answer.rs"]
mod answer;

use answer::answer;
use serde_json::Value;
use std::path::Path;

/// The number of cases may rise, never fall.
const LEAST_CASES: usize = 9;

/// What a difference is taken relative to.
#[derive(Clone, Copy, Debug)]
enum Against {
    /// One metre or radian.
    One,
    /// The largest joint or drive force at that height.
    Force,
    /// The largest bending moment at that height.
    Moment,
    /// The drop at that height.
    Drop,
    /// The largest part of this displacement at any height of the case.
    Widest(&'static str),
    /// The value itself, or a millimetre if that is more.
    Play,
    /// The value itself.
    Itself,
}

/// How close a value has to be: geometry is closed form; forces solve a well-conditioned system; friction is iterated
/// on both sides; the deflections of the reference are integrated numerically.
fn tolerance(path: &[&str]) -> Option<(f64, Against)> {
    let last = *path.last()?;
    Some(match path[0] {
        // Of the reference solver itself, or of the space frame.
        "friction_iterations" | "F0_virtual_work" | "m3d" => return None,
        "strength" => (1e-4, Against::Itself),
        "deck_height" | "theta" | "carriage_x" | "top_axle_x" | "top_tilt" | "top_pivot_x"
        | "screw_length" => (1e-9, Against::One),
        "F0" | "N_axial0" | "NB" | "NT" | "joints" | "caster_left" | "caster_right" => (1e-6, Against::Force),
        "arm_internal" if last == "at_f" => (1e-3, Against::One),
        "arm_internal" if last != "M" => (1e-6, Against::Force),
        "arm_internal" | "M_max" => (1e-6, Against::Moment),
        "F_raise" | "F_lower" => (1e-5, Against::Force),
        "T_raise" | "T_lower" | "crank_force" | "eff_total" => (1e-5, Against::Itself),
        "deflection" if matches!(last, "play" | "lash") => (1e-3, Against::Play),
        "deflection" if path[1] == "tilt" => (1e-3, Against::Widest("tilt")),
        "deflection" if path[1] == "drift" => (1e-3, Against::Widest("drift")),
        "deflection" => (1e-3, Against::Drop),
        "limits" | "k_drive" | "dH_ds" => (1e-6, Against::Itself),
        _ => (0.0, Against::Itself),
    })
}

fn number(value: &Value) -> f64 {
    value.as_f64().unwrap_or(f64::NAN)
}

fn largest_force(row: &Value) -> f64 {
    let joints = row["joints"].as_object().unwrap().values();
    joints.map(|force| number(&force[0]).hypot(number(&force[1]))).fold(number(&row["F0"]).abs(), f64::max)
}

fn widest(rows: &[Value], kind: &str) -> f64 {
    let parts = rows.iter().filter_map(|row| row["deflection"][kind].as_object()).flatten();
    let elastic = parts.filter(|(key, _)| !matches!(key.as_str(), "play" | "lash"));
    elastic.map(|(_, value)| number(value).abs()).fold(0.0, f64::max)
}

fn scale(against: Against, want: f64, row: &Value, rows: &[Value]) -> f64 {
    let scale = match against {
        Against::One => 1.0,
        Against::Force => largest_force(row),
        Against::Moment => number(&row["M_max"]),
        Against::Drop => number(&row["deflection"]["drop"]["total"]).abs(),
        Against::Widest(kind) => widest(rows, kind),
        Against::Play => want.abs().max(1e-3),
        Against::Itself => want.abs(),
    };
    scale.max(1e-12)
}

/// Every leaf of a tree with its path.
fn leaves<'a>(tree: &'a Value, path: &mut Vec<&'a str>, found: &mut Vec<(Vec<&'a str>, &'a Value)>) {
    const DIGITS: [&str; 8] = ["0", "1", "2", "3", "4", "5", "6", "7"];
    let mut inside = |key: &'a str, value: &'a Value| {
        path.push(key);
        leaves(value, path, found);
        path.pop();
    };
    match tree {
        Value::Object(map) => map.iter().for_each(|(key, value)| inside(key, value)),
        Value::Array(list) => list.iter().zip(DIGITS).for_each(|(value, key)| inside(key, value)),
        _ => found.push((path.clone(), tree)),
    }
}

fn pick<'a>(tree: &'a Value, path: &[&str]) -> &'a Value {
    path.iter().fold(tree, |tree, key| match tree {
        Value::Array(list) => &list[key.parse::<usize>().unwrap()],
        _ => &tree[*key],
    })
}

/// A sign near zero may fall either way.
fn is_close_call(path: &[&str], row: &Value) -> bool {
    let force = match path {
        ["uplift", "base_wheel"] => &row["NB"],
        ["uplift", "top_wheel"] => &row["NT"],
        ["uplift", "base_pivot"] => &row["joints"]["BL"][1],
        ["uplift", "top_pivot"] => &row["joints"]["TL"][1],
        _ => return false,
    };
    number(force).abs() < 1e-6 * largest_force(row)
}

/// Compares one tree of expected values; returns how many were held and what was off.
fn compare(want: &Value, have: &Value, rows: &[Value], off: &mut Vec<String>) -> usize {
    let mut found = Vec::new();
    leaves(want, &mut Vec::new(), &mut found);
    let mut held = 0;
    for (path, want_leaf) in found {
        let Some((tolerance, against)) = tolerance(&path) else { continue };
        let have_leaf = pick(have, &path);
        let fits = match want_leaf.as_f64() {
            Some(value) => {
                let off = (number(have_leaf) - value).abs();
                off <= tolerance * scale(against, value, want, rows)
            }
            None => have_leaf == want_leaf || is_close_call(&path, want),
        };
        held += 1;
        if !fits {
            off.push(format!("{}: want {want_leaf} have {have_leaf}", path.join(".")));
        }
    }
    held
}

#[test]
fn whole_mechanisms_agree_with_an_independent_solver() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("reference/cases");
    let files = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let cases: Vec<_> = files.filter(|file| file.extension().is_some_and(|end| end == "json")).collect();
    assert!(cases.len() >= LEAST_CASES, "only {} cases are left", cases.len());
    let mut off = Vec::new();
    for file in cases {
        let name = file.file_stem().unwrap().to_string_lossy().into_owned();
        let case: Value = serde_json::from_str(&std::fs::read_to_string(&file).unwrap()).unwrap();
        let answer = answer(&case["input"].to_string()).expect(&name);
        let rows = case["expected"].as_array().unwrap();
        let mut wrong = Vec::new();
        let limits = serde_json::json!({ "limits": case["limits"] });
        let mut held = compare(&limits, &answer, rows, &mut wrong);
        for (want, have) in rows.iter().zip(answer["results"].as_array().unwrap()) {
            held += compare(want, have, rows, &mut wrong);
        }
        assert!(held > 40 * rows.len(), "{name}: only {held} values were compared");
        off.extend(wrong.into_iter().map(|line| format!("{name}: {line}")));
    }
    assert!(off.is_empty(), "{}", off.join("\n"));
}
