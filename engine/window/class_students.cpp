#include "engine/window/class_view.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

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
  cell(fmt::format("{} of {}", sum.passed, sum.sittings));
  cell(std::to_string(student.mean));
  cell(fmt::format("{} of {}", sum.exact, sum.readings));
  cell(std::to_string(sum.missed));
  cell(std::to_string(sum.stops));
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
  if (!ImGui::BeginTable("students", 6, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Student", ImGuiTableColumnFlags_WidthStretch, 2.2F);
  for (const char* words : {"Passed", "Mean", "Exact", "Missed", "Stopped"}) {
    ImGui::TableSetupColumn(words, ImGuiTableColumnFlags_WidthStretch, 1.0F);
  }
  ImGui::TableHeadersRow();
  for (const auto& student : students) {
    draw_student_row(app, view, student);
  }
  ImGui::EndTable();
  ImGui::TextWrapped("Mean: of the graded readings, per mille. Missed: findings read as negative. Stopped: "
                     "sittings stopped for safety.");
}

void draw_class_student(App& app) {
  ClassView& view = *app.classes;
  const auto& page = *view.room.page();
  if (app.widgets.button("student.back", "All students")) {
    show_page(app, ClassPage::Students);
    return;
  }
  heading(page.call(view.student, view.by_name).c_str());
  if (ImGui::BeginTable("sittings", 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    ImGui::TableSetupColumn("Open", ImGuiTableColumnFlags_WidthFixed);
    ImGui::TableSetupColumn("Case", ImGuiTableColumnFlags_WidthStretch, 1.2F);
    ImGui::TableSetupColumn("Taken in", ImGuiTableColumnFlags_WidthStretch, 0.9F);
    ImGui::TableSetupColumn("How it stands", ImGuiTableColumnFlags_WidthStretch, 2.0F);
    ImGui::TableHeadersRow();
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
