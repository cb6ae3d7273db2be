#include "engine/scoring/standards.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <array>

namespace matula::window {

namespace {

using scoring::Ledger;

struct LedgerRow {
  Ledger ledger;
  const char* title;
};
constexpr std::array<LedgerRow, 5> ledgers{{{Ledger::Reading, "Reading"},
                                            {Ledger::Interpretation, "Interpretation"},
                                            {Ledger::Arithmetic, "Arithmetic"},
                                            {Ledger::Process, "Procedure"},
                                            {Ledger::Safety, "Safety"}}};

void draw_mark(const scoring::Mark& mark) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  if (mark.possible > 0) {
    ImGui::Text("%d of %d", mark.earned, mark.possible);
  } else {
    ImGui::TextUnformatted("note");
  }
  cell(mark.label);
  const bool written = mark.ledger != Ledger::Process && mark.ledger != Ledger::Safety;
  cell(!written ? "" : mark.entered.empty() ? "nothing" : mark.entered);
  cell(written ? mark.expected : "");
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  if (!mark.reason.empty()) {
    ImGui::TextWrapped("%s", mark.reason.c_str());
  }
  if (!mark.root_words.empty() && mark.root != mark.item) {
    ImGui::TextWrapped("Charged to: %s", mark.root_words.c_str());
  }
}

void draw_ledger(const scoring::Report& report, const LedgerRow& row) {
  heading(
      fmt::format("{}: {} of {}", row.title, report.earned(row.ledger), report.possible(row.ledger)).c_str());
  if (!ImGui::BeginTable(row.title, 5, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Marks", ImGuiTableColumnFlags_WidthFixed, ImGui::CalcTextSize("88 of 88").x);
  ImGui::TableSetupColumn("For", ImGuiTableColumnFlags_WidthStretch, 1.1F);
  ImGui::TableSetupColumn("Wrote", ImGuiTableColumnFlags_WidthStretch, 0.9F);
  ImGui::TableSetupColumn("Right", ImGuiTableColumnFlags_WidthStretch, 0.9F);
  ImGui::TableSetupColumn("As the student is told", ImGuiTableColumnFlags_WidthStretch, 2.6F);
  table_headings();
  for (const auto& mark : report.marks) {
    if (mark.ledger == row.ledger) {
      draw_mark(mark);
    }
  }
  ImGui::EndTable();
}

void draw_standing(App& app, const classroom::OpenSitting& open) {
  const std::string words =
      fmt::format("{}, mean {} of 1000; {}", say_passed(open.row), open.row.standing.mean, open.row.ledgers);
  app.widgets.tell("sitting.standing", words);
  ImGui::TextWrapped("%s", words.c_str());
  if (open.other_rules) {
    ImGui::TextWrapped("The score that counts was made by other rules, or by another text of the case. Below "
                       "are the marks by the rules of today; the page \"Marking anew\" makes them count.");
  }
  for (const auto& check : open.checks) {
    point("When the result was opened, " + check);
  }
  for (const auto& loss : open.report.losses) {
    point(fmt::format("{} marks lost through: {}", loss.lost, loss.words));
  }
}

void draw_why(const classroom::OpenSitting& open) {
  heading("Why each reading came out so, as the student is told");
  if (!open.explained) {
    ImGui::TextWrapped("Being worked out: the student's work is replayed with one deviation after the other "
                       "put right.");
  }
  for (const auto& one : open.why) {
    if (!one.words.empty()) {
      point(one.words);
    }
  }
}

} // namespace

void draw_class_sitting(App& app) {
  ClassView& view = *app.classes;
  const auto& open = view.room.sitting();
  if (app.widgets.button("sitting.back", "Back to the student")) {
    view.room.close_sitting();
    show_page(app, ClassPage::Student);
    return;
  }
  app.widgets.tell("sitting.open", open ? std::to_string(open->row.number) : "0");
  if (!open) {
    ImGui::TextWrapped("%s", view.room.trouble().empty() ? "The sitting is being replayed and marked." : "");
    return;
  }
  app.widgets.tell("sitting.explained", open->explained ? "1" : "0");
  flow(width_of("Replay on the bench"));
  if (app.widgets.button("sitting.replay", "Replay on the bench")) {
    begin_replay(app);
    return;
  }
  heading(fmt::format("Sitting {} by {}: {}", open->row.number,
                      view.room.page()->call(open->row.pseudonym, view.by_name), open->row.title)
              .c_str());
  draw_standing(app, *open);
  for (const LedgerRow& row : ledgers) {
    if (open->report.possible(row.ledger) > 0) {
      draw_ledger(open->report, row);
    }
  }
  draw_why(*open);
}

} // namespace matula::window
