#include "engine/author/sheet.hpp"

#include <fmt/format.h>

namespace matula::author {

namespace {

constexpr const char* style = R"(
@page { size: A4; margin: 14mm 14mm 12mm 14mm; }
* { box-sizing: border-box; }
body { font: 10.5pt/1.35 "Noto Sans", sans-serif; color: #000; margin: 0; }
h1 { font-size: 14pt; margin: 0 0 1mm 0; }
.student { break-after: page; }
.head { border-bottom: 0.6mm solid #000; padding-bottom: 2mm; margin-bottom: 4mm; }
.head .who { float: right; font-size: 14pt; font-weight: bold; }
.form { border: 0.3mm solid #000; margin-bottom: 5mm; break-inside: avoid; }
.form .top { background: #e4e4e4; padding: 1.5mm 3mm; font-weight: bold; }
.form .top span { float: right; font-weight: normal; }
.form .patient { padding: 2mm 3mm; border-bottom: 0.3mm solid #000; }
.form table { border-collapse: collapse; width: 100%; }
.form td { border-top: 0.2mm solid #888; padding: 1.2mm 3mm; vertical-align: top; }
.form tr:first-child td { border-top: 0; }
.form td.answer { width: 58%; border-left: 0.2mm solid #888; }
.blanks span { display: inline-block; width: 23%; margin-right: 1.5%; height: 9.5mm; border-bottom: 0.2mm dotted #888; vertical-align: top; }
.sign { margin-top: 10mm; }
.sign span { display: inline-block; width: 29%; margin-right: 4%; border-top: 0.2mm solid #000; padding-top: 1mm; font-size: 8.5pt; }
.small { font-size: 8.5pt; color: #333; }
table.key { border-collapse: collapse; width: 100%; }
.key td, .key th { border: 0.2mm solid #888; padding: 1.2mm 2mm; vertical-align: top; text-align: left; }
.key th { background: #e4e4e4; }
.key tr { break-inside: avoid; }
.labels { display: flex; flex-wrap: wrap; }
.label { width: 60mm; height: 30mm; border: 0.2mm dashed #666; padding: 2mm 3mm; break-inside: avoid; overflow: hidden; font-size: 8.5pt; }
.label .number { font-size: 13pt; font-weight: bold; }
)";

std::string escaped(const std::string& words) {
  std::string out;
  for (const char letter : words) {
    switch (letter) {
    case '&':
      out += "&amp;";
      break;
    case '<':
      out += "&lt;";
      break;
    case '>':
      out += "&gt;";
      break;
    case '"':
      out += "&quot;";
      break;
    default:
      out += letter;
    }
  }
  return out;
}

std::string line(const std::string& asked, const std::string& note) {
  return "<tr><td>" + escaped(asked) + "</td><td class=\"answer small\">" + escaped(note) + "</td></tr>\n";
}

/// A cell with room for several figures, each named.
std::string blanks(const std::string& asked, const std::string& note, const std::vector<const char*>& names) {
  std::string html = "<tr><td>" + escaped(asked) + "</td><td class=\"answer small\">" + escaped(note) +
                     "<div class=\"blanks\">";
  for (const char* name : names) {
    html += std::string("<span>") + name + "</span>";
  }
  return html + "</div></td></tr>\n";
}

std::string request_form(const FormUnknown& unknown, std::size_t number, const Shelf& shelf) {
  const auto& scenario = unknown.scenario;
  const auto& patient = scenario.patient;
  std::string html =
      "<div class=\"form\"><div class=\"top\"><span>" + escaped(unknown.number) + "</span>Unknown " +
      std::to_string(number) + "</div>\n<div class=\"patient\"><b>" + escaped(patient.name) + "</b>, " +
      escaped(patient.age_sex) + " &middot; " + escaped(patient.ward) + "<br>" + escaped(patient.request) +
      "<br><span class=\"small\">" + escaped(patient.specimen_note) + "</span></div>\n<table>\n";
  if (scenario.asked.look) {
    html += blanks("Colour, clarity, odour", "", {"colour", "clarity", "odour"});
  }
  if (scenario.asked.specific_gravity) {
    html += blanks("Specific gravity, with its corrections: the gravity after each",
                   fmt::format("float made for {:g} °C", scenario.rules.calibration_c),
                   {"in water", "°C", "read", "own error", "temperature", "protein", "sugar", "reported"});
  }
  for (const auto& key : scenario.asked.procedures) {
    html += line(shelf.standards->rules.find_test(key)->request, "");
  }
  return html + "</table></div>\n";
}

std::string student_page(const Plan& plan, const Form& form, const Shelf& shelf) {
  std::string html = "<section class=\"student\"><div class=\"head\"><div class=\"who\">" +
                     escaped(form.student) + "</div><h1>" + escaped(plan.title) +
                     "</h1><div class=\"small\">Saint Brannoc's Teaching Hospital &middot; all patients are "
                     "invented</div>";
  html += plan.about.empty() ? "" : "<div>" + escaped(plan.about) + "</div>";
  html += "</div>\n";
  for (std::size_t i = 0; i < form.unknowns.size(); ++i) {
    html += request_form(form.unknowns[i], i + 1, shelf);
  }
  return html + "<div class=\"sign\"><span>date</span><span>begun, ended</span><span>signature</span></div>"
                "</section>\n";
}

std::string label(const Form& form, std::size_t number) {
  const auto& unknown = form.unknowns[number];
  return "<div class=\"label\"><div class=\"number\">" + escaped(unknown.number) + "</div>" +
         escaped(unknown.scenario.patient.name) + "<br>" + escaped(unknown.scenario.patient.age_sex) +
         "<br>for " + escaped(form.student) + ", unknown " + std::to_string(number + 1) + "</div>\n";
}

std::string page_head(const std::string& title) {
  return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>" + escaped(title) +
         "</title><style>" + style + "</style></head><body>\n";
}

/// What each test of an unknown shows by the book, and how near to another word.
std::string shown_by_the_book(const FormUnknown& unknown) {
  std::string html;
  for (const Shown& shown : unknown.shown) {
    const std::string distance =
        shown.from_line ? fmt::format(" ({:.2f} of a grade from the line)", *shown.from_line) : "";
    html += escaped(shown.title) + ": <b>" + escaped(shown.word) + "</b>" + distance + "<br>";
  }
  return html;
}

} // namespace

std::string printable_key(const Plan& plan, const std::vector<Form>& forms) {
  std::string html =
      page_head(plan.title + ": key") + "<div class=\"head\"><h1>" + escaped(plan.title) +
      ": the key</h1><div>Yours alone. What each unknown shows by the book, read by the reference reader; "
      "the "
      "larger the difficulty (logits), the harder to read.</div></div>\n<table "
      "class=\"key\"><thead><tr><th>Student"
      "</th><th>Unknown</th><th>Patient</th><th>By the book</th><th>Specific gravity</th><th>Difficulty</th>"
      "</tr></thead><tbody>\n";
  for (const auto& form : forms) {
    for (std::size_t i = 0; i < form.unknowns.size(); ++i) {
      const auto& unknown = form.unknowns[i];
      html += "<tr><td>" + escaped(form.student) + "</td><td>" + std::to_string(i + 1) + "<br>" +
              escaped(unknown.number) + "</td><td>" + escaped(unknown.scenario.patient.name) + "</td><td>" +
              shown_by_the_book(unknown) +
              fmt::format("</td><td>{:.3f}</td><td>{:+.2f}</td></tr>\n", unknown.gravity, unknown.difficulty);
    }
  }
  return html + "</tbody></table></body></html>\n";
}

std::string printable_sheet(const Plan& plan, const std::vector<Form>& forms, const Shelf& shelf) {
  std::string html = page_head(plan.title);
  for (const auto& form : forms) {
    html += student_page(plan, form, shelf);
  }
  html += "<section><div class=\"head\"><h1>Labels</h1><div class=\"small\">Cut along the lines; one on each "
          "cup.</div>"
          "</div><div class=\"labels\">\n";
  for (const auto& form : forms) {
    for (std::size_t i = 0; i < form.unknowns.size(); ++i) {
      html += label(form, i);
    }
  }
  return html + "</div></section></body></html>\n";
}

} // namespace matula::author
