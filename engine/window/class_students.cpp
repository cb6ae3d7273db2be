#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <array>

namespace matula::window {

namespace {

using classroom::StudentColumn;

void draw_student_row(App& app, ClassView& view, const judging::StudentView& student) {
  const auto& sum = student.sum;
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  if (app.widgets.button(("student." + sum.pseudonym).c_str(), sum.pseudonym)) {
    view.student = sum.pseudonym;
    show_page(app, ClassPage::Student);
  }
  const auto& names = view.room.page()->names;
  if (const auto name = names.find(sum.pseudonym); view.by_name && name != names.end()) {
    ImGui::TextWrapped("%s", name->second.c_str()); // Too long for a button, perhaps.
  }
  cell(std::to_string(sum.sittings));
  cell(std::to_string(sum.passed));
  cell(sum.readings > 0 ? std::to_string(student.mean) : "none");
  cell(fmt::format("{} of {}", sum.exact, sum.readings));
  cell(std::to_string(sum.missed));
  cell(std::to_string(sum.false_alarms));
  cell(std::to_string(sum.stops));
}

struct ColumnRow {
  StudentColumn column;
  const char* name;
  const char* words;
  float width;
};
constexpr std::array<ColumnRow, 8> columns{{{StudentColumn::Name, "name", "Student", 2.4F},
                                            {StudentColumn::Sittings, "sittings", "Sittings", 1.0F},
                                            {StudentColumn::Passed, "passed", "Passed", 0.9F},
                                            {StudentColumn::Mean, "mean", "Mean", 0.8F},
                                            {StudentColumn::Exact, "exact", "Exact", 1.2F},
                                            {StudentColumn::Missed, "missed", "Missed", 0.9F},
                                            {StudentColumn::FalseAlarms, "alarms", "Alarms", 0.9F},
                                            {StudentColumn::Stops, "stops", "Stops", 0.8F}}};

/// Headings that put the list in order; pressed once more the other way round.
void draw_headings(App& app, ClassView& view) {
  ImGui::TableNextRow(ImGuiTableRowFlags_Headers);
  for (const ColumnRow& row : columns) {
    ImGui::TableNextColumn();
    const bool by_this = view.order == row.column;
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(by_this ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button((std::string("order.") + row.name).c_str(), row.words)) {
      view.order_down = by_this ? !view.order_down : row.column != StudentColumn::Name;
      view.order = row.column;
    }
    ImGui::PopStyleColor();
    if (by_this) {
      app.widgets.tell("students.order", std::string(row.name) + (view.order_down ? " down" : " up"));
    }
  }
}

/// The order as last worked out; made anew when the list, the column or the names change.
const std::vector<std::size_t>& order_of(ClassView& view) {
  const auto& page = *view.room.page();
  const std::string made_for = fmt::format("{} {} {} {}", view.room.pages(), static_cast<int>(view.order),
                                           view.order_down, view.by_name);
  if (view.ordered_for != made_for) {
    view.ordered_for = made_for;
    view.ordered = classroom::students_in_order(page, view.order, view.order_down, view.by_name);
  }
  return view.ordered;
}

void draw_sitting_row(App& app, ClassView& view, const records::SittingRow& row) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  if (app.widgets.button(fmt::format("sitting.{}", row.number).c_str(),
                         fmt::format("Sitting {}", row.number))) {
    view.room.open_sitting(row.number);
    show_page(app, ClassPage::Sitting);
  }
  cell(row.title);
  cell(fmt::format("{}{}{}", classroom::day_in_words(row.received_s), row.label.empty() ? "" : ", ",
                   row.label));
  cell(fmt::format("{}, mean {}; {}{}", say_passed(row), row.standing.mean, row.ledgers,
                   row.handed_in           ? ""
                   : row.continued_in != 0 ? fmt::format("; goes on in sitting {}", row.continued_in)
                                           : "; not handed in"));
}

/// Sealed results in which something differed: they count, and the instructor decides.
void draw_to_review(App& app, ClassView& view) {
  const auto& page = *view.room.page();
  if (page.to_review.empty()) {
    return;
  }
  heading(fmt::format("To be reviewed: {}", page.to_review.size()).c_str());
  for (const auto& one : page.to_review) {
    if (app.widgets.button(fmt::format("review.{}", one.number).c_str(),
                           fmt::format("Sitting {}", one.number))) {
      view.room.open_sitting(one.number);
      view.student = one.pseudonym;
      show_page(app, ClassPage::Sitting);
      return;
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    ImGui::TextWrapped("%s, %s: %s", page.call(one.pseudonym, view.by_name).c_str(), one.exercise.c_str(),
                       fmt::format("{}", fmt::join(one.why, "; ")).c_str());
  }
  ImGui::TextWrapped(
      "Their marks count in every figure until you decide otherwise. What differs is said, not "
      "why.");
}

void draw_eye(const judging::StudentView& student) {
  bool any = false;
  for (const auto& group : student.lines) {
    if (!group.sentence.empty()) {
      any = true;
      point(group.sentence);
    }
    for (const auto& line : group.lines) {
      if (!line.sentence.empty()) {
        any = true;
        point(line.sentence);
      }
    }
  }
  if (!any) {
    ImGui::TextWrapped("The readings so far carry no sentence about this student's eye.");
  }
  for (const auto& group : student.lines) {
    if (!group.lines.empty()) {
      ImGui::TextWrapped("%s, %d readings. Dashed: the reference reader; dot and bar: this student.",
                         group.title.c_str(), group.readings);
      draw_class_lines_picture(group, {});
    }
  }
}

} // namespace

void draw_class_students(App& app) {
  ClassView& view = *app.classes;
  const auto& students = view.room.page()->view.students;
  heading("Students");
  if (students.empty()) {
    ImGui::TextWrapped("No sitting has been taken in yet.");
    return;
  }
  draw_to_review(app, view);
  const auto by = std::find_if(columns.begin(), columns.end(),
                               [&](const ColumnRow& row) { return row.column == view.order; });
  ImGui::TextWrapped("In the order of the column %s, %s.", by->words,
                     view.order_down ? "largest first" : "smallest first");
  if (!ImGui::BeginTable("students", static_cast<int>(columns.size()),
                         ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  for (const ColumnRow& row : columns) {
    ImGui::TableSetupColumn(row.words, ImGuiTableColumnFlags_WidthStretch, row.width);
  }
  draw_headings(app, view);
  const auto& order = order_of(view);
  for (const std::size_t i : order) {
    draw_student_row(app, view, students[i]);
  }
  ImGui::EndTable();
  app.widgets.tell("students.first", students[order.front()].sum.pseudonym);
  app.widgets.tell("students.last", students[order.back()].sum.pseudonym);
  ImGui::TextWrapped("Mean: of the graded readings, per mille. Exact: readings on the very grade. Missed: "
                     "findings read as negative. Alarms: nothing there read as a finding. Stops: sittings "
                     "stopped for safety. A heading puts the list in order, pressed again the other way "
                     "round; passed and exact go by their shares.");
}

void draw_class_student(App& app) {
  ClassView& view = *app.classes;
  const auto& page = *view.room.page();
  if (app.widgets.button("student.back", "All students")) {
    show_page(app, ClassPage::Students);
    return;
  }
  flow(width_of("Forget this student"));
  if (app.widgets.button("student.forget", "Forget this student")) {
    begin_forgetting(app, view.student);
    return;
  }
  heading(page.call(view.student, view.by_name).c_str());
  if (ImGui::BeginTable("sittings", 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    ImGui::TableSetupColumn("Open", ImGuiTableColumnFlags_WidthFixed);
    ImGui::TableSetupColumn("Case", ImGuiTableColumnFlags_WidthStretch, 1.2F);
    ImGui::TableSetupColumn("Taken in", ImGuiTableColumnFlags_WidthStretch, 0.9F);
    ImGui::TableSetupColumn("How it stands", ImGuiTableColumnFlags_WidthStretch, 2.0F);
    table_headings();
    for (const auto& row : page.sittings) {
      if (row.pseudonym == view.student) {
        draw_sitting_row(app, view, row);
      }
    }
    ImGui::EndTable();
  }
  const auto found = std::find_if(page.view.students.begin(), page.view.students.end(),
                                  [&](const auto& one) { return one.sum.pseudonym == view.student; });
  if (found != page.view.students.end()) {
    heading("What the student would be told of their eye");
    draw_eye(*found);
  }
}

} // namespace matula::window
