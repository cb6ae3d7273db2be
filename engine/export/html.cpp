#include "engine/export/html.hpp"

#include "engine/export/plots.hpp"
#include "engine/scoring/standards.hpp"

#include <fmt/format.h>

namespace matula::exports {

namespace {

constexpr const char* style = R"css(
@page { size: A4; margin: 16mm 14mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt "Noto Sans", sans-serif; } }
body { font: 10.5pt/1.4 "Noto Sans", sans-serif; color: #000; background: #fff; max-width: 182mm; margin: 0 auto; padding: 4mm; }
h1 { font-size: 17pt; margin: 0 0 2mm; } h2 { font-size: 13pt; margin: 8mm 0 2mm; border-bottom: 1px solid #000; }
h3 { font-size: 11pt; margin: 5mm 0 1mm; } p { margin: 1mm 0; }
table { border-collapse: collapse; margin: 2mm 0; } th, td { padding: 0.6mm 2.2mm; border-bottom: 0.5px solid #999; text-align: left; vertical-align: top; }
th { border-bottom: 1px solid #000; font-weight: bold; } td.n, th.n { text-align: right; }
table.wide { width: 100%; } td.who { white-space: nowrap; } table.wide td:last-child { width: 40%; } table.review td:last-child { width: 62%; } td ul { margin: 0; padding-left: 4mm; }
figure { margin: 2mm 0; break-inside: avoid; } figcaption { font-size: 9pt; } svg { max-width: 100%; height: auto; }
.note { font-size: 9pt; } .keep { break-inside: avoid; } tr { break-inside: avoid; } h2, h3 { break-after: avoid; }
)css";

std::string with_interval(const std::optional<judging::WithInterval>& figure) {
  if (!figure) {
    return "too few";
  }
  return figure->interval ? fmt::format("{:.2f} ({:.2f} to {:.2f})", figure->value, figure->interval->low,
                                        figure->interval->high)
                          : fmt::format("{:.2f}", figure->value);
}

std::string head(const judging::ClassView& view, const PageWishes& wishes) {
  const auto& s = view.standard;
  return fmt::format("<h1>{}</h1>\n<p>{}. {} sittings, {} graded readings, {} students. Results of training "
                     "at a simulated bench; no patient was "
                     "examined.</p>\n<p>{} of {} sittings with graded readings passed. {} more would have by "
                     "the mean of their readings, and "
                     "missed a finding a doctor must hear of; {} were stopped for safety. {} lie close to "
                     "the mark{}.</p>\n",
                     escaped(wishes.title), escaped(wishes.day), view.sittings, view.readings,
                     view.students.size(), s.passed, s.sittings, s.failed_by_findings, s.failed_by_safety,
                     s.borderline, s.borderline > 0 ? ": look at those sittings as a whole" : "");
}

std::string who(const std::string& pseudonym, const PageWishes& wishes) {
  const auto name = wishes.names.find(pseudonym);
  return escaped(name == wishes.names.end() ? pseudonym : name->second + " (" + pseudonym + ")");
}

/// Sittings whose sealed result did not hold what it should; nothing when there is none.
std::string reviews(const PageWishes& wishes) {
  if (wishes.to_review.empty()) {
    return "";
  }
  std::string text =
      "<h2>To be reviewed</h2>\n<p class=\"note\">When these results were opened, something "
      "was not as it should be. That may be a slip: talk to the student before you think "
      "anything else. Their marks count in every figure of this report.</p>\n<table "
      "class=\"wide review\"><tr><th class=\"n\">sitting</th><th>student</th><th>case</th><th>what "
      "differs</th></tr>\n";
  for (const auto& one : wishes.to_review) {
    std::string why;
    for (const auto& words : one.why) {
      why += "<li>" + escaped(words) + "</li>";
    }
    text += fmt::format("<tr><td class=\"n\">{}</td><td class=\"who\">{}</td><td>{}</td><td><ul>{}</ul></td>"
                        "</tr>\n",
                        one.number, who(one.pseudonym, wishes), escaped(one.exercise), why);
  }
  return text + "</table>\n";
}

std::string agreement(const judging::ClassView& view) {
  std::string text =
      "<h2>How the class read</h2>\n<p class=\"note\">Rows of the tables are what the tubes showed to the "
      "reference reader, columns "
      "what was written. Kappa and AC2 tell agreement beyond chance (1 is perfect); in brackets what holds "
      "in 95 of 100 classes "
      "drawn anew, student by student. Bias is in grades; below 0 the class writes less than is "
      "there.</p>\n<table><tr><th>Test</th>"
      "<th class=\"n\">readings</th><th class=\"n\">exact</th><th class=\"n\">within one</th><th "
      "class=\"n\">bias</th><th>weighted kappa "
      "(linear)</th><th>AC2 (linear)</th><th class=\"n\">missed</th><th class=\"n\">false alarms</th></tr>\n";
  for (const auto& test : view.tests) {
    text += fmt::format("<tr><td class=\"who\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td "
                        "class=\"n\">{}</td><td class=\"n\">{}</td><td>{}</td><td>{}</td>"
                        "<td class=\"n\">{}</td><td class=\"n\">{}</td></tr>\n",
                        escaped(test.title), test.readings,
                        test.plain ? fmt::format("{:.0f} %", 100 * test.plain->exact) : "-",
                        test.plain ? fmt::format("{:.0f} %", 100 * test.plain->within_one) : "-",
                        test.plain ? fmt::format("{:+.2f}", test.plain->bias) : "-",
                        with_interval(test.kappa_linear), with_interval(test.gwet_linear),
                        test.missed_findings, test.false_alarms);
  }
  text += "</table>\n";
  for (const auto& test : view.tests) {
    text += "<figure><h3>" + escaped(test.title) + "</h3>\n" + confusion_plot(test) +
            fmt::format("<figcaption>{} readings by {} students; {} tubes were not named. The darker, the "
                        "larger a share of its row.</figcaption></figure>\n",
                        test.readings, test.students, test.unwritten);
  }
  return text;
}

std::string lines(const judging::ClassView& view) {
  std::string text = "<h2>Where the lines are drawn</h2>\n";
  for (const auto& group : view.lines) {
    if (group.lines.empty()) {
      text +=
          "<p>" + escaped(group.title) + fmt::format(": {} readings, too few to tell.</p>\n", group.readings);
      continue;
    }
    text += "<figure>" + lines_plot(group, view.students) + "<figcaption>" + escaped(group.title) +
            fmt::format(", {} readings. Dashed: the reference reader. Dot and bar: the class as one reader. "
                        "Ticks: each student. "
                        "The class's shift is {:+.2f} grades, its unsteadiness {:.2f}.",
                        group.readings, group.shift ? group.shift->value : 0.0, group.spread) +
            "</figcaption></figure>\n";
    for (const auto& line : group.lines) {
      text +=
          line.sentence.empty()
              ? ""
              : fmt::format(
                    "<p>The class as one reader draws the line between {} and {} at {:.2f}, the reference "
                    "reader at {:.2f}: {} readings lie near it.</p>\n",
                    escaped(line.below), escaped(line.above), line.own.value, line.reference, line.near);
    }
  }
  for (const auto& swap : view.swaps) {
    if (!swap.sentence.empty()) {
      text += fmt::format("<p>{} and {} are taken for each other: of {} tubes of either {} were called the "
                          "other, where unsteadiness alone explains {:.0f}.</p>\n",
                          escaped(swap.one), escaped(swap.other), swap.tubes, swap.swapped, swap.explained);
    }
  }
  return text;
}

std::string items(const judging::ClassView& view) {
  std::string text = "<h2>Items</h2>\n<p class=\"note\">Of the first sitting each student handed in at a "
                     "case. Crosses in the pictures are items to be looked at.</p>\n";
  for (const auto& one : view.cases) {
    text += fmt::format("<h3>{}</h3>\n<p>{} students{}</p>\n", escaped(one.exercise), one.students,
                        one.kr20 ? fmt::format("; KR-20 {:.2f}, standard error of measurement {:.1f} items",
                                               *one.kr20, one.error.value_or(0))
                                 : std::string("; too few for KR-20"));
    if (one.kr20) {
      text += "<figure>" + items_plot(one) + "</figure>\n";
    }
    std::string rows;
    for (std::size_t i = 0; i < one.items.size(); ++i) {
      const auto& item = one.items[i];
      if (!item.behaved_badly.empty()) {
        rows += fmt::format(
            "<tr><td class=\"n\">{}</td><td>{}</td><td class=\"n\">{:.0f} %</td><td>{}</td></tr>\n", i + 1,
            escaped(item.label), 100 * item.right, escaped(item.behaved_badly));
      }
    }
    text += rows.empty() ? ""
                         : "<table><tr><th class=\"n\">no.</th><th>item</th><th "
                           "class=\"n\">right</th><th>look at it because</th></tr>\n" +
                               rows + "</table>\n";
  }
  return text;
}

std::string students(const judging::ClassView& view, const PageWishes& wishes) {
  std::string text =
      "<h2>Students</h2>\n<table class=\"wide\"><tr><th>student</th><th class=\"n\">sittings</th><th "
      "class=\"n\">passed</th><th class=\"n\">mean</th><th class=\"n\">exact</th>"
      "<th class=\"n\">missed</th><th class=\"n\">stopped</th><th>what each would be told of "
      "their eye</th></tr>\n";
  for (const auto& student : view.students) {
    std::string told;
    for (const auto& group : student.lines) {
      told += group.sentence.empty() ? "" : escaped(group.sentence) + " ";
      for (const auto& line : group.lines) {
        told += line.sentence.empty() ? "" : escaped(line.sentence) + " ";
      }
    }
    text += fmt::format(
        "<tr><td class=\"who\">{}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td "
        "class=\"n\">{}</td><td "
        "class=\"n\">{} of {}</td><td class=\"n\">{}</td><td class=\"n\">{}</td><td>{}</td></tr>\n",
        who(student.sum.pseudonym, wishes), student.sum.sittings, student.sum.passed, student.mean,
        student.sum.exact, student.sum.readings, student.sum.missed, student.sum.stops, told);
  }
  return text + "</table>\n";
}

} // namespace

std::string class_page(const judging::ClassView& view, const PageWishes& wishes) {
  constexpr std::size_t most_faults = 15;
  return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>" + escaped(wishes.title) +
         "</title><style>" + style + "</style></head><body>\n" + head(view, wishes) + reviews(wishes) +
         "<div class=\"keep\"><h2>The standard</h2>\n<p class=\"note\">A sitting is passed when the mean of "
         "its readings, the findings missed and safety are each good enough; "
         "none makes up for another. The solid line shows what would become of these sittings if the pass "
         "mark moved.</p>\n<figure>" +
         standard_plot(view.standard) + "</figure></div>\n" +
         "<div class=\"keep\"><h2>What it was lost by</h2>\n<p class=\"note\">Every lost mark is charged to "
         "one fault.</p>\n<figure>" +
         faults_plot(view.faults, most_faults) + "</figure></div>\n" + agreement(view) + lines(view) +
         items(view) + students(view, wishes) + "</body></html>\n";
}

} // namespace matula::exports
