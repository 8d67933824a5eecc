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
use risewright::drawing::boring::{PX_PER_MM, TILE, Tile, tiles};
use risewright::drawing::{Shape, widths};
use risewright::parts::{Form, Part, parts};
use risewright::quantity::{Length, System};
use risewright::share::flat;
use risewright::share::{csv, dxf as file, svg};
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
    let forms = [Form::Sheet, Form::FlatBar, Form::LightBar, Form::SquareTube];
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

/// Every template of a part, in both systems.
fn templates(part: &Part) -> impl Iterator<Item = (System, Vec<Tile>)> {
    let rows = tables(core::slice::from_ref(part), Length::mm(0.2))
        .pop()
        .map(|table| table.rows)
        .unwrap_or_default();
    [System::Metric, System::Inch]
        .into_iter()
        .map(move |system| (system, tiles(part, &rows, system, &widths)))
}

/// What of A4 and of Letter is left within margins of 12 mm, upright: ISO 216 and ANSI/ASME Y14.1 sheet A.
const PAPERS: [[f64; 2]; 2] = [[210.0 - 24.0, 297.0 - 24.0], [215.9 - 24.0, 279.4 - 24.0]];

#[test]
fn templates_cover_the_part_on_either_paper() {
    for part in flat_parts() {
        for (_, tiles) in templates(&part) {
            assert!(!tiles.is_empty(), "{}", part.name);
            for tile in &tiles {
                for (side, drawn) in [tile.drawn.width, tile.drawn.height].into_iter().enumerate() {
                    assert!((drawn / PX_PER_MM - TILE[side]).abs() < EXACT);
                    assert!(PAPERS.iter().all(|paper| TILE[side] <= paper[side]));
                }
            }
            // Every place on the part is in a window, and its window goes on past it or ends at the part's own edge.
            for (x, y) in (0..=60_u8).flat_map(|x| (0..=20_u8).map(move |y| (x, y))) {
                let at =
                    [part.size[0].to_mm() * f64::from(x) / 60.0, part.size[1].to_mm() * f64::from(y) / 20.0];
                let inside = |tile: &&Tile| {
                    (0..2).all(|side| {
                        at[side] >= tile.corner[side] && at[side] <= tile.corner[side] + tile.window[side]
                    })
                };
                assert!(tiles.iter().any(|tile| inside(&tile)), "{} at {at:?}", part.name);
            }
            // Neighbours share a strip, so that one can be laid on the other.
            for pair in
                tiles.windows(2).filter(|pair| pair[0].corner[1].to_bits() == pair[1].corner[1].to_bits())
            {
                let shared = pair[0].corner[0] + pair[0].window[0] - pair[1].corner[0];
                assert!(shared > 10.0, "{shared}");
            }
        }
    }
}

/// The span of the first run along x in the notation of a path.
fn reach(d: &str) -> f64 {
    let numbers = d.split(['M', 'H', 'V', ' ']).filter(|word| !word.is_empty());
    let numbers: Vec<f64> = numbers.map(|word| word.parse().unwrap()).collect();
    // Ticks are triples of x, y and the height they reach; the last run is the bar itself.
    let [.., from, _, to] = numbers.as_slice() else { panic!("{d}") };
    to - from
}

#[test]
fn every_template_carries_a_bar_of_its_length() {
    for part in flat_parts() {
        for (system, tiles) in templates(&part) {
            let wanted = if system == System::Metric { 100.0 } else { 4.0 * 25.4 };
            for tile in tiles {
                let bars: Vec<&str> = tile
                    .drawn
                    .marks
                    .iter()
                    .filter(|mark| mark.class == "bar")
                    .filter_map(|mark| match &mark.shape {
                        Shape::Path(d) => Some(d.as_str()),
                        _ => None,
                    })
                    .collect();
                let [bar] = bars.as_slice() else { panic!("one bar a template") };
                assert!((reach(bar) / PX_PER_MM - wanted).abs() < EXACT, "{}", reach(bar));
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
        let bought =
            cells(&csv::hardware(&bill(&design, &list, &[(design.arms.thickness, 1)], &[]), System::Inch));
        assert!(bought.len() > 20);
        assert_eq!(bought[0][3], "designation, sizes in inches", "the heading names the unit");
        for table in [whole, holes, bought] {
            assert!(table.iter().all(|row| row.len() == table[0].len()), "{table:?}");
        }
    }
}
