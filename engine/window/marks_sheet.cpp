#include "engine/window/panels.hpp"

#include <imgui.h>

#include <algorithm>

namespace matula::window {

namespace {

using scoring::Ledger;
using scoring::Mark;

struct SheetRow {
  Ledger ledger;
  const char* title;
};
constexpr SheetRow parts[] = {{Ledger::Reading, "Read"},
                              {Ledger::Arithmetic, "Worked out, step by step"},
                              {Ledger::Interpretation, "Concluded"}};

bool belongs(const Mark& mark, Ledger ledger) {
  const bool says_something = !mark.expected.empty() || !mark.entered.empty() || mark.earned < mark.possible;
  return mark.ledger == ledger && mark.possible > 0 && says_something;
}

void draw_line(const Mark& mark) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", mark.label.c_str());
  ImGui::TableNextColumn();
  // What is wrong is told by the sign as well as by the place.
  const char* sign = mark.earned == mark.possible ? "" : mark.earned > 0 ? "~ " : "x ";
  ImGui::TextWrapped("%s%s", sign, mark.entered.empty() ? "nothing" : mark.entered.c_str());
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", mark.expected.c_str());
}

void draw_part(const scoring::Report& report, const SheetRow& part) {
  const auto wanted = [&part](const Mark& mark) { return belongs(mark, part.ledger); };
  if (std::none_of(report.marks.begin(), report.marks.end(), wanted)) {
    return;
  }
  if (!ImGui::BeginTable(part.title, 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn(part.title, ImGuiTableColumnFlags_WidthStretch, 2.2F);
  ImGui::TableSetupColumn("Yours", ImGuiTableColumnFlags_WidthStretch, 1.2F);
  ImGui::TableSetupColumn("Right", ImGuiTableColumnFlags_WidthStretch, 1.2F);
  ImGui::TableHeadersRow();
  for (const Mark& mark : report.marks) {
    if (wanted(mark)) {
      draw_line(mark);
    }
  }
  ImGui::EndTable();
  ImGui::Spacing();
}

/// How the readings stand, and where the marks went.
void draw_standing(const scoring::Report& report) {
  for (const std::string& line : scoring::say(report.standing)) {
    ImGui::TextWrapped("%s", line.c_str());
  }
  for (const scoring::RootLoss& loss : report.losses) {
    ImGui::TextWrapped("%d lost through: %s", loss.lost, loss.words.c_str());
  }
  for (const scoring::Finding& finding : report.findings) {
    ImGui::TextWrapped("%s: %s.", finding.label.c_str(), finding.words.c_str());
  }
  ImGui::Spacing();
}

} // namespace

void draw_marks_sheet(const scoring::Report& report) {
  ImGui::TextWrapped("Your worksheet beside the right one. A later step is held against your own earlier "
                     "lines. x: no marks, ~: some.");
  ImGui::BeginChild("sheet", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  draw_standing(report);
  for (const SheetRow& part : parts) {
    draw_part(report, part);
  }
  ImGui::EndChild();
}

} // namespace matula::window
