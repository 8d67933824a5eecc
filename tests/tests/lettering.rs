//! Twelve odd tables in ten windows, two systems of units and three faces, with the reader's switches at their default and all on: no
//! two pieces of lettering meet, none is cut off, what must stand stands, and the level is one level.
//!
//! What is wanted of lettering is that of a drawing: figures never meet other figures or lines of theirs (ISO 129-1:2018, clause on
//! the position of dimensional values, from memory). The browser story `odd.mjs` asks the same of the page with real fonts.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

mod odd;

use risewright::drawing::{
    Area, Chart, Face, Layout, Mark, Measure, Picture, Shape, Sheet, Show, View, widths,
};
use risewright::quantity::{Kind, Length, Style, System, figures, print};
use risewright::report::{Report, Station, analyse};

/// Windows from a small phone to a large screen, CSS px.
const WINDOWS: [(u32, u32); 10] = [
    (320, 568),
    (360, 740),
    (390, 844),
    (768, 1024),
    (900, 700),
    (1024, 768),
    (1280, 720),
    (1440, 900),
    (1920, 1080),
    (2560, 1440),
];

/// Parts of the lift at which the deck stands.
const HEIGHTS: [f64; 5] = [0.0, 0.04, 0.3, 0.7, 1.0];

/// A picture with its report, where it was made, and the widths it was made with.
struct Case<'a> {
    report: &'a Report,
    station: &'a Station,
    view: &'a View,
    picture: &'a Picture,
    measure: Measure<'a>,
}

fn reports() -> Vec<(String, Report)> {
    let odd = odd::designs();
    assert_eq!(odd.len(), 12);
    odd.into_iter()
        .map(|(name, design)| {
            let report = analyse(&design).unwrap_or_else(|unsound| panic!("{name}: {:?}", unsound.phrases()));
            (name, report)
        })
        .collect()
}

/// The room the page's style sheet leaves for the picture in a window: margins, inputs and the sheet's frame taken off.
fn view((width, height): (u32, u32), system: System) -> View {
    let (across, down) = match (width, height) {
        (..900, _) => return View::new(width, height, Layout::Narrow, system),
        (..1280, _) => (40, 252),
        (..=1400, _) | (_, ..=840) => (316, 252),
        _ => (344, 290),
    };
    View::new(width.min(1800) - across, (height - down).clamp(420, 1100), Layout::Wide, system)
}

fn everything(view: View) -> View {
    let show = Show { dimensions: true, forces: true, bending: true, bent: true, load: true, support: true };
    View { show, charts: Chart::ALL.to_vec(), ..view }
}

/// A face of equal widths: every sign 0.602 of the size (DejaVu Sans Mono 2.37, horizontal metrics of the font).
fn mono(words: &str, face: Face) -> f64 {
    words.chars().count() as f64 * 0.602 * face.size()
}

/// A fifth wider than the widest face of the page's own list, as a reader's own font may be.
fn wider(words: &str, face: Face) -> f64 {
    1.2 * widths(words, face)
}

/// Applies a check to every picture and lists where it complains.
fn each(check: impl Fn(&Case<'_>) -> Vec<String>) {
    let faces: [(&str, Measure<'_>); 3] = [("DejaVu Sans", &widths), ("mono", &mono), ("wider", &wider)];
    let mut wrong = Vec::new();
    // Over each lies the one before it: another size, drive and name.
    let reports = reports();
    let mut other = &reports[reports.len() - 1].1;
    for (name, report) in &reports {
        let span = report.highest() - report.lowest();
        let stations = HEIGHTS.map(|part| report.at(report.lowest() + part * span));
        for window in WINDOWS {
            for system in [System::Metric, System::Inch] {
                let plain = view(window, system);
                for view in [everything(plain.clone()), plain] {
                    for (face, measure) in faces {
                        for over in [None, Some(other)] {
                            let sheet = Sheet::over(report, over, &view, measure);
                            for station in &stations {
                                let picture = picture(&sheet, report, over, station, measure);
                                let case = Case { report, station, view: &view, picture: &picture, measure };
                                let deck = station.height * 1e3;
                                let charts = view.charts.len();
                                let alone = if over.is_some() { "over another" } else { "alone" };
                                wrong.extend(check(&case).into_iter().map(|trouble| {
                                    format!("{name} {alone}, {window:?}, {system:?}, {charts} plots, {face}, deck {deck:.0}: {trouble}")
                                }));
                            }
                        }
                    }
                }
            }
        }
        other = report;
    }
    let some: Vec<&String> = wrong.iter().step_by(wrong.len() / 30 + 1).collect();
    assert!(wrong.is_empty(), "{} times, among them {some:#?}", wrong.len());
}

fn picture(
    sheet: &Sheet,
    report: &Report,
    over: Option<&Report>,
    station: &Station,
    measure: Measure<'_>,
) -> Picture {
    let mut moving = over.map_or_else(Vec::new, |other| sheet.outline(other, station.height, measure));
    let (marks, live) = sheet.moving(report, station, measure);
    moving.extend(marks);
    Picture {
        width: sheet.width,
        height: sheet.height,
        still: sheet.still.clone(),
        curves: Vec::new(),
        moving,
        frame: sheet.frame.clone(),
        live,
    }
}

fn words(mark: &Mark) -> Option<&str> {
    match &mark.shape {
        Shape::Text { words, .. } if !words.is_empty() => Some(words),
        _ => None,
    }
}

impl Case<'_> {
    fn marks(&self) -> impl Iterator<Item = &Mark> {
        self.picture.still.iter().chain(&self.picture.moving)
    }

    /// Words with the boxes they take.
    fn lettering(&self) -> Vec<(&str, Area)> {
        self.marks().filter_map(|mark| Some((words(mark)?, mark.lettering(self.measure)?))).collect()
    }

    /// Whether lettering of a class says it, alone or after a word.
    fn says(&self, class: &str, wanted: &str) -> bool {
        self.marks().filter(|mark| mark.class.split(' ').any(|one| one == class)).filter_map(words).any(
            |text| text == wanted || text.strip_suffix(wanted).is_some_and(|before| before.ends_with(' ')),
        )
    }
}

#[test]
fn no_two_meet_and_none_is_cut_off() {
    each(|case| {
        let paper = Area { x: 0.0, y: 0.0, width: case.picture.width, height: case.picture.height };
        let texts = case.lettering();
        let mut wrong = Vec::new();
        for (index, (words, area)) in texts.iter().enumerate() {
            if !paper.holds(area) {
                wrong.push(format!("{words:?} is cut off: {area:?}"));
            }
            let met = texts[..index].iter().filter(|(_, other)| area.meets(other));
            wrong.extend(met.map(|(other, _)| format!("{words:?} meets {other:?}: {area:?}")));
        }
        wrong
    });
}

#[test]
fn what_must_stand_stands() {
    each(|case| {
        let system = case.view.system;
        let size = |metres: f64| figures::size(metres, system).number;
        let load = print(case.report.design.load.mass.steps(), Kind::Mass, system, Style::Short).text();
        let raise = figures::large_force(case.station.raise(), system).number;
        [
            ("dt", size(case.report.lowest()), "lowest deck"),
            ("dt", size(case.report.highest()), "highest deck"),
            ("live", size(case.station.height), "deck now"),
            ("tagt", size(case.station.height), "tag at the level"),
            ("b", load, "load"),
            ("force-t", raise, "raise"),
        ]
        .into_iter()
        .filter(|(class, wanted, _)| !case.says(class, wanted))
        .map(|(_, wanted, what)| format!("{what} {wanted} is missing"))
        .collect()
    });
}

#[test]
fn the_level_is_one_level() {
    each(|case| {
        let height = case.station.height;
        let frame = &case.picture.frame;
        let deck = frame.scale.y(case.station.pose.deck_height * 1e3);
        let lines: Vec<f64> = case
            .marks()
            .filter_map(|mark| match (&mark.shape, mark.class) {
                (Shape::Line { from, to }, "level") if (from.y - to.y).abs() < 1e-9 => Some(from.y),
                _ => None,
            })
            .collect();
        let drawn_at = |y: f64| lines.iter().any(|line| (line - y).abs() <= 1.0);
        let mut wrong = Vec::new();
        if !drawn_at(deck) {
            wrong.push(format!("the deck stands at {deck}, level lines at {lines:?}"));
        }
        for plot in &frame.plots {
            let level = plot.scale.level(height);
            if !drawn_at(level) || case.view.layout == Layout::Wide && (level - deck).abs() > 1.0 {
                wrong.push(format!("{:?} has the deck at {level}, drawn at {deck}: {lines:?}", plot.chart));
            }
        }
        wrong
    });
}

#[test]
fn the_twelve_are_odd() {
    // What the collection must keep covering, whoever changes it.
    let reports = reports();
    let stages: Vec<usize> = reports.iter().map(|(_, report)| report.stations[0].pose.n).collect();
    assert!([1, 2, 3, 4].iter().all(|count| stages.contains(count)), "{stages:?}");
    let designs = || reports.iter().map(|(_, report)| &report.design);
    for drive in 0..4 {
        assert!(designs().any(|design| design.drive.kind as i64 == drive), "no drive {drive}");
    }
    let arm = |design: &risewright::design::Design| design.lift.arm_length;
    assert!(designs().any(|design| arm(design) <= Length::mm(200.0)));
    assert!(designs().any(|design| arm(design) >= Length::mm(2500.0)));
    assert!(designs().any(|design| design.name.chars().count() == risewright::design::NAME_LIMIT));
}
