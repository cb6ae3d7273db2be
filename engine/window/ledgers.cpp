#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <array>

namespace matula::window {

namespace {

using scoring::Ledger;

struct LedgerRow {
  Ledger ledger;
  const char* title;
};
constexpr std::array<LedgerRow, 5> ledgers{{{Ledger::Reading, "Reading: what the tube shows"},
                                            {Ledger::Interpretation, "Interpretation: what it means"},
                                            {Ledger::Arithmetic, "Arithmetic: each step of the correction"},
                                            {Ledger::Process, "Procedure: what the vessels went through"},
                                            {Ledger::Safety, "Safety"}}};

void draw_mark(const scoring::Mark& mark) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  if (mark.possible > 0) {
    ImGui::Text("%d of %d", mark.earned, mark.possible);
  } else {
    ImGui::TextUnformatted("note");
  }
  ImGui::TableNextColumn();
  std::string words = mark.label;
  // What a vessel went through is said in the sentence below.
  const bool written = mark.ledger != Ledger::Process && mark.ledger != Ledger::Safety;
  if (written && !mark.entered.empty()) {
    const bool asked = !words.empty() && words.back() == '?';
    words += (asked ? " You wrote: " : ": you wrote ") + mark.entered;
  }
  ImGui::TextWrapped("%s", words.c_str());
  if (!mark.reason.empty()) {
    ImGui::TextWrapped("%s", mark.reason.c_str());
  }
}

void draw_ledger(const scoring::Report& report, const LedgerRow& row) {
  heading(
      fmt::format("{}: {} of {}", row.title, report.earned(row.ledger), report.possible(row.ledger)).c_str());
  if (!ImGui::BeginTable(row.title, 2, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("marks", ImGuiTableColumnFlags_WidthFixed, ImGui::CalcTextSize("88 of 88").x);
  ImGui::TableSetupColumn("what");
  for (const scoring::Mark& mark : report.marks) {
    if (mark.ledger == row.ledger) {
      draw_mark(mark);
    }
  }
  ImGui::EndTable();
}

} // namespace

void draw_ledgers(const scoring::Report& report) {
  if (report.safety_stop) {
    ImGui::TextWrapped("Safety stop: this is not passed, whatever the other marks.");
  }
  for (const LedgerRow& row : ledgers) {
    if (report.possible(row.ledger) > 0) {
      draw_ledger(report, row);
    }
  }
}

} // namespace matula::window
