//! A document as HTML. Words are escaped here and nowhere else, so that no name of a design can become markup; there is no `style` and no
//! script in it.
use super::document::{Act, Block, Cell, Document, Entry, Field, Figure, Fold, Span, Table, Text};
use crate::drawing::{escaped, write as put};

impl Document {
    /// The document as the inside of an element; its title is a heading of the second level.
    #[must_use]
    pub fn html(&self) -> String {
        let mut out = format!("<h2>{}</h2>", escaped(&self.title));
        blocks(&mut out, &self.blocks);
        out
    }
}

fn blocks(out: &mut String, list: &[Block]) {
    list.iter().for_each(|piece| block(out, piece));
}

fn block(out: &mut String, block: &Block) {
    match block {
        Block::Heading(words) => put(out, format_args!("<h3>{}</h3>", escaped(words))),
        Block::Text(words) => paragraph(out, "", words),
        Block::Note(words) => paragraph(out, " class=\"note\"", words),
        Block::Caution(words) => paragraph(out, " class=\"caution\"", words),
        Block::Points(items) => list(out, "ul", items),
        Block::Steps(items) => list(out, "ol", items),
        Block::Table(content) => table(out, content),
        Block::Figure(content) => {
            out.push_str("<figure>");
            figure(out, content);
            if !content.caption.0.is_empty() {
                out.push_str("<figcaption>");
                text(out, &content.caption);
                out.push_str("</figcaption>");
            }
            out.push_str("</figure>");
        }
        Block::Fold(content) => fold(out, content),
        Block::Acts(list) => {
            out.push_str("<p class=\"acts\">");
            list.iter().for_each(|one| act(out, one));
            out.push_str("</p>");
        }
        Block::Field(content) => field(out, content),
        Block::Group(class, pieces) => {
            put(out, format_args!("<div class=\"{class}\">"));
            blocks(out, pieces);
            out.push_str("</div>");
        }
        Block::Shapes(shapes) => put(
            out,
            format_args!(
                "<svg class=\"shapes\" width=\"0\" height=\"0\" aria-hidden=\"true\"><defs>{shapes}</defs></svg>"
            ),
        ),
        Block::NewPage => out.push_str("<hr class=\"new-page\">"),
    }
}

/// The page listens to what changes in these, by their `data-answer`. Hint and fault are tied to the field for those who hear it.
fn field(out: &mut String, field: &Field) {
    let [key, label, value, hint, fault] =
        [&field.key, &field.label, &field.value, &field.hint, &field.fault].map(|text| escaped(text));
    let mut ties = Vec::new();
    if !hint.is_empty() {
        ties.push(format!("{key}-hint"));
    }
    if !fault.is_empty() {
        ties.push(format!("{key}-fault"));
    }
    let mut tied = String::new();
    if !ties.is_empty() {
        put(&mut tied, format_args!(" aria-describedby=\"{}\"", ties.join(" ")));
    }
    if !fault.is_empty() {
        tied.push_str(" aria-invalid=\"true\"");
    }
    put(out, format_args!("<div class=\"asked\"><label for=\"{key}\">{label}</label>"));
    match &field.entry {
        Entry::Written => put(
            out,
            format_args!(
                "<input id=\"{key}\" data-answer=\"{key}\" type=\"text\" autocomplete=\"off\" spellcheck=\"false\" value=\"{value}\"{tied}>"
            ),
        ),
        Entry::Chosen(choices) => {
            put(out, format_args!("<select id=\"{key}\" data-answer=\"{key}\"{tied}>"));
            for (choice, words) in choices {
                let chosen = if *choice == field.value { " selected" } else { "" };
                put(
                    out,
                    format_args!("<option value=\"{}\"{chosen}>{}</option>", escaped(choice), escaped(words)),
                );
            }
            out.push_str("</select>");
        }
        Entry::Slid { least, most, step, words } => put(
            out,
            format_args!(
                "<input id=\"{key}\" data-answer=\"{key}\" type=\"range\" min=\"{least}\" max=\"{most}\" step=\"{step}\" value=\"{value}\" aria-valuetext=\"{}\"{tied}>",
                escaped(words)
            ),
        ),
        Entry::Marked => {
            let marked = if field.value == "yes" { " checked" } else { "" };
            put(
                out,
                format_args!("<input id=\"{key}\" data-answer=\"{key}\" type=\"checkbox\"{marked}{tied}>"),
            );
        }
    }
    if !hint.is_empty() {
        put(out, format_args!("<span class=\"hint\" id=\"{key}-hint\">{hint}</span>"));
    }
    if !fault.is_empty() {
        put(out, format_args!("<span class=\"fault\" id=\"{key}-fault\">{fault}</span>"));
    }
    out.push_str("</div>");
}

fn paragraph(out: &mut String, class: &str, words: &Text) {
    put(out, format_args!("<p{class}>"));
    text(out, words);
    out.push_str("</p>");
}

fn list(out: &mut String, tag: &str, items: &[Vec<Block>]) {
    put(out, format_args!("<{tag}>"));
    for item in items {
        out.push_str("<li>");
        match item.as_slice() {
            [Block::Text(words)] => text(out, words),
            pieces => blocks(out, pieces),
        }
        out.push_str("</li>");
    }
    put(out, format_args!("</{tag}>"));
}

/// A wide table scrolls by itself, so that the page need not; a keyboard reaches it for that.
fn table(out: &mut String, table: &Table) {
    let caption = escaped(&table.caption);
    put(
        out,
        format_args!(
            "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{caption}\"><table><caption>{caption}</caption>"
        ),
    );
    if !table.head.is_empty() {
        out.push_str("<thead><tr>");
        let numeric = |column: usize| {
            table
                .rows
                .iter()
                .find(|row| row.len() == table.head.len())
                .and_then(|row| row.get(column))
                .is_some_and(|cell| matches!(cell, Cell::Number(_) | Cell::StrongNumber(_)))
        };
        for (column, name) in table.head.iter().enumerate() {
            let class = if numeric(column) { " class=\"n\"" } else { "" };
            put(out, format_args!("<th scope=\"col\"{class}>{}</th>", escaped(name)));
        }
        out.push_str("</tr></thead>");
    }
    out.push_str("<tbody>");
    for (at, row) in table.rows.iter().enumerate() {
        if let [Cell::Heading(words)] = row.as_slice() {
            // Each heading begins a group of lines.
            let begin = if at > 0 { "</tbody><tbody>" } else { "" };
            let (wide, words) = (table.head.len(), escaped(words));
            put(
                out,
                format_args!(
                    "{begin}<tr class=\"part\"><th scope=\"rowgroup\" colspan=\"{wide}\">{words}</th></tr>"
                ),
            );
        } else {
            line(out, row);
        }
    }
    out.push_str("</tbody>");
    if !table.foot.is_empty() {
        out.push_str("<tfoot>");
        table.foot.iter().for_each(|row| line(out, row));
        out.push_str("</tfoot>");
    }
    out.push_str("</table></div>");
}

fn line(out: &mut String, cells: &[Cell]) {
    out.push_str("<tr>");
    for content in cells {
        put(out, format_args!("<td{}>", class(content)));
        cell(out, content);
        out.push_str("</td>");
    }
    out.push_str("</tr>");
}

const fn class(cell: &Cell) -> &'static str {
    match cell {
        Cell::Words(_) => "",
        Cell::Number(_) => " class=\"n\"",
        Cell::StrongNumber(_) => " class=\"n strong\"",
        Cell::Picture(_) => " class=\"picture\"",
        Cell::Heading(_) => " class=\"strong\"",
    }
}

fn cell(out: &mut String, cell: &Cell) {
    match cell {
        Cell::Words(words) => text(out, words),
        Cell::Number(words) | Cell::StrongNumber(words) | Cell::Heading(words) => {
            out.push_str(&escaped(words));
        }
        Cell::Picture(content) => figure(out, content),
    }
}

fn fold(out: &mut String, fold: &Fold) {
    let open = if fold.open { " open" } else { "" };
    put(out, format_args!("<details data-fold=\"{}\"{open}><summary>", escaped(&fold.id)));
    for content in &fold.line {
        put(out, format_args!("<span{}>", class(content)));
        cell(out, content);
        out.push_str("</span> ");
    }
    out.push_str("</summary><div class=\"unfolded\">");
    blocks(out, &fold.blocks);
    out.push_str("</div></details>");
}

fn figure(out: &mut String, figure: &Figure) {
    let (width, height) = (figure.width, figure.height);
    let unit = if figure.true_scale { "mm" } else { "" };
    let seen = if figure.label.is_empty() {
        "aria-hidden=\"true\"".to_owned()
    } else {
        format!("role=\"img\" aria-label=\"{}\"", escaped(&figure.label))
    };
    put(
        out,
        format_args!(
            "<svg class=\"dwg\" width=\"{width:.2}{unit}\" height=\"{height:.2}{unit}\" viewBox=\"0 0 {width:.2} {height:.2}\" {seen}>{}</svg>",
            figure.marks
        ),
    );
}

fn text(out: &mut String, words: &Text) {
    for span in &words.0 {
        match span {
            Span::Words(words) => out.push_str(&escaped(words)),
            Span::Strong(words) => put(out, format_args!("<strong>{}</strong>", escaped(words))),
            Span::Formula(words) => formula(out, words),
            Span::Code(words) => put(out, format_args!("<code>{}</code>", escaped(words))),
            Span::Act(one) => act(out, one),
        }
    }
}

/// A formula with its subscripts set low.
fn formula(out: &mut String, words: &str) {
    let mut pieces = words.split('_');
    put(out, format_args!("<code>{}", escaped(pieces.next().unwrap_or_default())));
    for piece in pieces {
        let is_end = |(at, sign): (usize, char)| {
            let comma = sign == ',' && piece[at + 1..].starts_with(char::is_alphanumeric);
            (!sign.is_alphanumeric() && !comma).then_some(at)
        };
        let (low, rest) = piece.split_at(piece.char_indices().find_map(is_end).unwrap_or(piece.len()));
        put(out, format_args!("<sub>{}</sub>{}", escaped(low), escaped(rest)));
    }
    out.push_str("</code>");
}

/// The page listens to the `data-` attributes of these; see its `views/reader`.
fn act(out: &mut String, act: &Act) {
    match act {
        Act::Go { words, height, check } => put(
            out,
            format_args!(
                "<button type=\"button\" data-go=\"{height}\" data-check=\"{check}\">{}</button>",
                escaped(words)
            ),
        ),
        Act::Take { words, link } => put(
            out,
            format_args!(
                "<button type=\"button\" data-take=\"{}\">{}</button>",
                escaped(link),
                escaped(words)
            ),
        ),
        Act::Save { words, file } => put(
            out,
            format_args!(
                "<button type=\"button\" data-save=\"{}\">{}</button>",
                escaped(file),
                escaped(words)
            ),
        ),
        Act::Print { words } => {
            put(out, format_args!("<button type=\"button\" data-print>{}</button>", escaped(words)));
        }
        Act::Keep { words, what } => put(
            out,
            format_args!(
                "<button type=\"button\" data-keep=\"{}\">{}</button>",
                escaped(what),
                escaped(words)
            ),
        ),
        Act::Open { words, link } => put(
            out,
            format_args!(
                "<button type=\"button\" data-open=\"{}\">{}</button>",
                escaped(link),
                escaped(words)
            ),
        ),
        Act::View { words, view } => {
            put(
                out,
                format_args!("<button type=\"button\" data-view=\"{view}\">{}</button>", escaped(words)),
            );
        }
        Act::Answer { words, key, value, pressed } => {
            let state = pressed.map_or_else(String::new, |pressed| format!(" aria-pressed=\"{pressed}\""));
            put(
                out,
                format_args!(
                    "<button type=\"button\" data-answer=\"{}\" value=\"{}\"{state}>{}</button>",
                    escaped(key),
                    escaped(value),
                    escaped(words)
                ),
            );
        }
        Act::Tick { words, key } => {
            put(
                out,
                format_args!(
                    "<label class=\"tick\"><input type=\"checkbox\" data-tick=\"{}\"> <span>{}</span></label>",
                    escaped(key),
                    escaped(words)
                ),
            );
        }
        Act::Untick { words } => {
            put(out, format_args!("<button type=\"button\" data-untick>{}</button>", escaped(words)));
        }
    }
}
