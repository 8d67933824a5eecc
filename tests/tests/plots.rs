//! What is saved of a plot is what is plotted: CSV and table against the stations of the report and the curves on screen.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop")]

use risewright::design::Demo;
use risewright::drawing::{Chart, LIGHT, Layout, Plotted, Sheet, View, widths};
use risewright::quantity::System;
use risewright::report::{Report, Station, analyse};
use risewright::share::plot;

/// The international inch and pound-force: exact by definition (NIST SP 811, appendix B.8).
const INCH: f64 = 0.0254;
const POUND_FORCE: f64 = 4.448_221_615_260_5;

/// CSV is written to the sixth decimal.
const WRITTEN: f64 = 0.6e-6;

/// Head and lines of a CSV text without quotes in it.
fn read(csv: &str) -> (Vec<String>, Vec<Vec<f64>>) {
    assert!(csv.ends_with("\r\n") && !csv.contains('"'));
    let mut lines = csv.split_terminator("\r\n").map(|line| line.split(',').collect::<Vec<_>>());
    let head: Vec<String> = lines.next().unwrap().into_iter().map(str::to_owned).collect();
    let rows: Vec<Vec<f64>> =
        lines.map(|line| line.into_iter().map(|cell| cell.parse().unwrap()).collect()).collect();
    assert!(rows.iter().all(|row| row.len() == head.len()), "{head:?}");
    (head, rows)
}

fn reports() -> Vec<Report> {
    Demo::ALL.into_iter().map(|demo| analyse(&demo.design()).unwrap()).collect()
}

/// A figure of a station, and how many of its SI unit make one of the reader's, metric and in inches.
type Row = (Chart, usize, fn(&Station) -> f64, [f64; 2]);

const ROWS: [Row; 8] = [
    (Chart::ScrewForce, 0, |at| at.raise(), [1e3, POUND_FORCE]),
    (Chart::ScrewForce, 1, |at| at.still(), [1e3, POUND_FORCE]),
    (Chart::ScrewForce, 2, |at| at.lower(), [1e3, POUND_FORCE]),
    (Chart::Sag, 0, |at| at.sag().total(), [1e-3, INCH]),
    (Chart::Sag, 1, |at| at.sag().total() + at.sag().play, [1e-3, INCH]),
    (Chart::CrankForce, 0, |at| at.crank_raise(), [1.0, POUND_FORCE]),
    (Chart::Casters, 0, |at| at.casters()[0], [1.0, POUND_FORCE]),
    (Chart::Casters, 1, |at| at.casters()[1], [1.0, POUND_FORCE]),
];

#[test]
fn csv_holds_every_station_of_the_report() {
    for report in reports() {
        for (place, system) in [System::Metric, System::Inch].into_iter().enumerate() {
            for (chart, curve, figure, units) in ROWS {
                let (head, rows) = read(&plot::csv(&Plotted::of(chart, &report, system)));
                assert_eq!(rows.len(), report.stations.len(), "{head:?}");
                for (row, station) in rows.iter().zip(&report.stations) {
                    let height = station.height / [1e-3, INCH][place];
                    let value = figure(station) / units[place];
                    assert!((row[0] - height).abs() <= WRITTEN, "{head:?}: {row:?}, {height}");
                    assert!((row[1 + curve] - value).abs() <= WRITTEN, "{head:?}: {row:?}, {value}");
                }
            }
        }
    }
}

#[test]
fn csv_heads_name_the_curves_and_their_units() {
    let report = &reports()[0];
    let (metric, _) = read(&plot::csv(&Plotted::of(Chart::ScrewForce, report, System::Metric)));
    assert_eq!(
        metric,
        ["deck height (mm)", "raise (kN)", "without friction (kN)", "lower (kN)", "limit: crank 150 N (kN)"]
    );
    let (inch, _) = read(&plot::csv(&Plotted::of(Chart::ArmMoment, report, System::Inch)));
    assert_eq!(inch, ["deck height (in)", "arms A (lbf in)", "arms B (lbf in)"]);
}

#[test]
fn csv_and_the_curves_on_screen_are_the_same_points() {
    for report in reports() {
        let mut view = View::new(1600, 800, Layout::Wide, System::Metric);
        for chart in Chart::ALL {
            view.charts = vec![chart];
            let sheet = Sheet::new(&report, &view, &widths);
            let area = &sheet.frame.plots[0];
            let (_, rows) = read(&plot::csv(&Plotted::of(chart, &report, System::Metric)));
            // The main curve is drawn last.
            let points = &sheet.curves.last().unwrap().points;
            assert_eq!(points.len(), rows.len());
            let (first, last) = (&rows[0], &rows[rows.len() - 1]);
            let place = |row: &[f64]| (row[1], row[0] / 1e3);
            // One scale leads from values to pixels: taken from two rows that lie far apart, it must hold for all.
            let widest = rows
                .iter()
                .max_by(|one, other| (one[1] - first[1]).abs().total_cmp(&(other[1] - first[1]).abs()));
            let far = rows.iter().position(|row| Some(row) == widest).unwrap();
            let per_value = (points[far].x - points[0].x) / (rows[far][1] - first[1]);
            for (row, point) in rows.iter().zip(points) {
                let (value, height) = place(row);
                let x = points[0].x + (value - first[1]) * per_value;
                assert!((point.x - x).abs() < 1e-3, "{chart:?} {row:?}: {point:?}, {x}");
                assert!((point.y - area.scale.level(height)).abs() < 1e-3, "{chart:?} {row:?}");
            }
            assert!(last[0] > first[0]);
        }
    }
}

/// A figure of the table as a number.
fn number(words: &str) -> f64 {
    words.replace('−', "-").replace(['\u{A0}', '\u{202F}'], "").parse().unwrap()
}

#[test]
fn the_table_reads_the_curve_at_round_heights_and_at_its_extremes() {
    for report in reports() {
        for chart in Chart::ALL {
            let plotted = Plotted::of(chart, &report, System::Metric);
            let (table, (_, rows)) = (plotted.table(), read(&plot::csv(&plotted)));
            assert!((15..=40).contains(&table.rows.len()), "{chart:?}: {} rows", table.rows.len());
            for line in &table.rows {
                let height = number(&line.height);
                for (curve, (words, extreme)) in line.values.iter().enumerate() {
                    let value = number(words);
                    let digit = words
                        .split('.')
                        .nth(1)
                        .map_or(1.0, |decimals| 10_f64.powi(-i32::try_from(decimals.len()).unwrap()));
                    // The height is whole millimetres; between two rows of the file the curve is straight.
                    let near: Vec<f64> = rows
                        .windows(2)
                        .filter(|pair| pair[0][0] - 0.5 <= height && height <= pair[1][0] + 0.5)
                        .flat_map(|pair| [pair[0][1 + curve], pair[1][1 + curve]])
                        .collect();
                    let least = near.iter().copied().fold(f64::INFINITY, f64::min) - 0.51 * digit;
                    let most = near.iter().copied().fold(f64::NEG_INFINITY, f64::max) + 0.51 * digit;
                    assert!(
                        (least..=most).contains(&value),
                        "{chart:?} at {height}: {value} of {least} to {most}"
                    );
                    if *extreme {
                        let all = rows.iter().map(|row| row[1 + curve]);
                        let ends = [
                            all.clone().fold(f64::INFINITY, f64::min),
                            all.fold(f64::NEG_INFINITY, f64::max),
                        ];
                        assert!(
                            ends.iter().any(|end| (end - value).abs() <= 0.51 * digit),
                            "{chart:?}: {value} of {ends:?}"
                        );
                    }
                }
            }
            for curve in 0..table.rows[0].values.len().min(plotted.columns().len()) {
                let marked = table.rows.iter().filter(|line| line.values[curve].1).count();
                let limit = plotted.columns()[curve].name.starts_with("limit");
                assert_eq!(marked == 0, limit, "{chart:?}, column {curve}: {marked} marked");
            }
        }
    }
}

#[test]
fn a_saved_drawing_needs_nothing_but_itself() {
    for report in reports() {
        for chart in Chart::ALL {
            let plotted = Plotted::of(chart, &report, System::Metric);
            let svg = plotted.svg();
            assert!(!svg.contains("var(") && !svg.contains("url(") && !svg.contains("href"), "{chart:?}");
            let mut wanted =
                vec![plotted.title().to_owned(), report.design.name.clone(), "deck, mm".to_owned()];
            wanted.extend(
                plotted
                    .columns()
                    .into_iter()
                    .map(|column| column.name)
                    .filter(|name| !name.starts_with("limit"))
                    .take(1),
            );
            let texts: String = svg
                .split("<text")
                .skip(1)
                .filter_map(|text| Some(text.split_once('>')?.1.split_once('<')?.0))
                .collect::<Vec<_>>()
                .join("\n");
            for words in wanted {
                assert!(texts.contains(&words), "{chart:?}: {words} is not written on it");
            }
        }
    }
}

#[test]
fn saved_drawings_have_the_colours_of_the_page() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../web/style/tokens.css");
    let sheet = std::fs::read_to_string(path).unwrap();
    let light = sheet.split("@media").next().unwrap();
    for (name, value) in LIGHT.into_iter().filter(|(name, _)| *name != "font") {
        assert!(light.contains(&format!("--{name}:{value};")), "--{name} is not {value} on the page");
    }
}
