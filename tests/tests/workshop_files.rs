//! Files for machines and printers: DXF read back by a crate, SVG true to scale, CSV that comes apart as it was put together.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops at the first surprise"
)]

use dxf::entities::{Entity, EntityType, Polyline};
use dxf::{Drawing, Point};
use risewright::design::Demo;
use risewright::parts::{Form, Part, parts};
use risewright::quantity::{Length, System};
use risewright::share::flat::{self, Flat};
use risewright::share::svg::{self, Paper};
use risewright::share::{csv, dxf as file};
use risewright::workshop::drilling::tables;
use risewright::workshop::hardware::bill;
use risewright::workshop::sheets::{Search, jobs};

/// As exact as a file must be, mm.
const EXACT: f64 = 0.01;

fn read(text: &str) -> Drawing {
    Drawing::load(&mut std::io::Cursor::new(text.as_bytes())).expect("the file is DXF")
}

fn entities<'a>(drawing: &'a Drawing, layer: &'a str) -> impl Iterator<Item = &'a Entity> {
    drawing.entities().filter(move |entity| entity.common.layer == layer)
}

fn outlines(drawing: &Drawing, layer: &str) -> Vec<Polyline> {
    let lines = entities(drawing, layer).map(|entity| match &entity.specific {
        EntityType::Polyline(line) => line.clone(),
        other => panic!("{other:?} on {layer}"),
    });
    lines.collect()
}

/// Length and area of a closed outline with arcs: of each side the chord or the arc, and the segment between arc and chord.
fn measure(line: &Polyline) -> (f64, f64) {
    let corners: Vec<(Point, f64)> =
        line.vertices().map(|vertex| (vertex.location.clone(), vertex.bulge)).collect();
    let (mut length, mut area) = (0.0, 0.0);
    for (at, (from, bulge)) in corners.iter().enumerate() {
        let (to, _) = &corners[(at + 1) % corners.len()];
        let chord = (to.x - from.x).hypot(to.y - from.y);
        area += (from.x * to.y - to.x * from.y) / 2.0;
        if *bulge == 0.0 {
            length += chord;
        } else {
            let angle = 4.0 * bulge.atan();
            let radius = chord / (2.0 * (angle / 2.0).sin()).abs();
            length += radius * angle.abs();
            area += radius * radius * (angle - angle.sin()) / 2.0;
        }
    }
    (length, area)
}

/// What can be drawn flat: everything with a length, width and thickness to be cut.
fn flat_parts() -> Vec<Part> {
    let forms = [Form::Sheet, Form::FlatBar, Form::LightBar];
    Demo::ALL
        .iter()
        .flat_map(|demo| parts(&demo.design()))
        .filter(|part| forms.contains(&part.form))
        .collect()
}

#[test]
fn parts_come_back_from_dxf_with_their_sizes() {
    for part in flat_parts() {
        let drawing = read(&file::write(&flat::part(&part)));
        assert_eq!(drawing.header.version, dxf::enums::AcadVersion::R12);
        let outline = outlines(&drawing, "OUTLINE");
        assert_eq!(outline.len(), 1);
        assert!(outline[0].is_closed());
        let [long, wide] = [part.size[0].to_mm(), part.size[1].to_mm()];
        let [near, far] = part.corners.map(Length::to_mm);
        // A rounded corner saves its square and adds its quarter.
        let radii = 2.0 * (near + far);
        let (length, area) = measure(&outline[0]);
        let pi = std::f64::consts::PI;
        assert!(
            (length - (2.0 * (long + wide) - 2.0 * radii + pi / 2.0 * radii)).abs() < EXACT,
            "{}",
            part.name
        );
        let squares = 2.0 * (near * near + far * far);
        assert!(
            (area - (long * wide - squares * (1.0 - pi / 4.0))).abs() < EXACT * (long + wide),
            "{}",
            part.name
        );
        let circles: Vec<_> = entities(&drawing, "DRILL").collect();
        assert_eq!(circles.len(), part.holes.len());
        for (entity, hole) in circles.iter().zip(&part.holes) {
            let EntityType::Circle(circle) = &entity.specific else { panic!("a hole is a circle") };
            assert!((circle.center.x - hole.along.to_mm()).abs() < EXACT);
            assert!((circle.center.y - hole.across.to_mm()).abs() < EXACT);
            assert!((2.0 * circle.radius - hole.diameter.to_mm()).abs() < EXACT);
        }
        let housings = outlines(&drawing, "HOUSING");
        assert_eq!(housings.len(), part.housings.len());
        for (line, cut) in housings.iter().zip(&part.housings) {
            let (length, _) = measure(line);
            assert!(line.is_closed() && (length - 2.0 * (cut.length + cut.width).to_mm()).abs() < EXACT);
        }
    }
}

#[test]
fn sheets_come_back_from_dxf_with_every_piece() {
    for demo in Demo::ALL {
        let design = demo.design();
        for job in jobs(&design, &parts(&design)) {
            let mut search = Search::new(&job);
            search.advance(2000);
            for sheet in &search.best().sheets {
                let drawing = read(&file::write(&flat::sheet(&job, sheet)));
                let pieces = outlines(&drawing, "OUTLINE");
                assert_eq!(pieces.len(), sheet.placed.len());
                for (line, placed) in pieces.iter().zip(&sheet.placed) {
                    let (length, area) = measure(line);
                    let [long, wide] = [placed.length.to_mm(), placed.width.to_mm()];
                    assert!(line.is_closed() && (length - 2.0 * (long + wide)).abs() < EXACT);
                    assert!((area - long * wide).abs() < EXACT * (long + wide));
                }
                assert_eq!(outlines(&drawing, "BLANK").len(), 1);
            }
        }
    }
}

/// The value of an attribute of the first element, in its unit.
fn attribute<'a>(svg: &'a str, name: &str) -> &'a str {
    let start = svg.find(&format!(" {name}=\"")).unwrap() + name.len() + 3;
    &svg[start..start + svg[start..].find('"').unwrap()]
}

fn true_to_scale(svg: &str) -> [f64; 2] {
    let size = ["width", "height"]
        .map(|name| attribute(svg, name).strip_suffix("mm").unwrap().parse::<f64>().unwrap());
    let window: Vec<f64> =
        attribute(svg, "viewBox").split(' ').map(|number| number.parse().unwrap()).collect();
    assert_eq!(size.to_vec(), window[2..], "one unit is one millimetre");
    size
}

#[test]
fn svg_is_true_to_scale() {
    for part in flat_parts() {
        let flat = flat::part(&part);
        let svg = svg::write(&flat);
        let size = true_to_scale(&svg);
        assert!(
            (size[0] - part.size[0].to_mm() - 20.0).abs() < EXACT
                && (size[1] - part.size[1].to_mm() - 20.0).abs() < EXACT
        );
        assert_eq!(
            svg.matches("<circle").count(),
            flat.shapes.iter().filter(|(_, shape)| matches!(shape, flat::Shape::Circle(..))).count()
        );
    }
}

#[test]
fn templates_cover_the_part_and_carry_a_bar() {
    for part in flat_parts() {
        let flat: Flat = flat::part(&part);
        for (paper, size) in [(Paper::A4, [297.0, 210.0]), (Paper::Letter, [279.4, 215.9])] {
            let pages = svg::pages(&flat, paper);
            let per_page = (size[0] - 20.0) * (size[1] - 40.0);
            assert!(pages.len() as f64 * per_page >= flat.size[0] * flat.size[1]);
            for page in &pages {
                let own = true_to_scale(page);
                assert!((own[0] - size[0]).abs() < EXACT && (own[1] - size[1]).abs() < EXACT);
                assert!(page.contains("The bar is 100 mm long"));
            }
        }
    }
}

/// Cells of a file, by the rules of RFC 4180.
fn cells(text: &str) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut cell, mut quoted) = (Vec::new(), Vec::new(), String::new(), false);
    let mut signs = text.chars().peekable();
    while let Some(sign) = signs.next() {
        match (sign, quoted) {
            ('"', true) if signs.peek() == Some(&'"') => cell.push(signs.next().unwrap()),
            ('"', _) => quoted = !quoted,
            (',', false) => row.push(std::mem::take(&mut cell)),
            ('\r', false) => {}
            ('\n', false) => {
                row.push(std::mem::take(&mut cell));
                rows.push(std::mem::take(&mut row));
            }
            (sign, _) => cell.push(sign),
        }
    }
    rows
}

#[test]
fn csv_holds_every_part_hole_and_item() {
    for demo in Demo::ALL {
        let design = demo.design();
        let list = parts(&design);
        let sum = |rows: &[Vec<String>], column: usize| -> u32 {
            rows[1..].iter().map(|row| row[column].parse::<u32>().unwrap()).sum()
        };
        let whole = cells(&csv::parts(&list));
        assert_eq!(sum(&whole, 2), list.iter().map(|part| part.count).sum::<u32>());
        let holes = cells(&csv::holes(&tables(&list, Length::mm(0.2))));
        assert_eq!(
            sum(&holes, 2) as usize,
            list.iter().map(|part| part.holes.len() * part.count as usize).sum::<usize>()
        );
        let bought = cells(&csv::hardware(&bill(&design, &list, &[(design.arms.thickness, 1)]), System::Inch));
        assert!(bought.len() > 20);
        for table in [whole, holes, bought] {
            assert!(table.iter().all(|row| row.len() == table[0].len()), "{table:?}");
        }
    }
}
