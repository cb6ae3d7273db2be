#include "engine/scoring/standards.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

constexpr double percent = 100;

void draw_steps(const judging::StandardView& standard) {
  if (!ImGui::BeginTable("steps", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Pass mark", ImGuiTableColumnFlags_WidthStretch, 0.7F);
  ImGui::TableSetupColumn("Would pass", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  ImGui::TableSetupColumn("By the mean alone", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  table_headings();
  for (const auto& step : standard.steps) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::Text("%d%s", step.mark, step.mark == standard.mark ? "  (now)" : "");
    ImGui::TableNextColumn();
    draw_bar(step.passed, fmt::format("{:.0f} %", percent * step.passed));
    ImGui::TableNextColumn();
    draw_bar(step.by_mean, fmt::format("{:.0f} %", percent * step.by_mean));
  }
  ImGui::EndTable();
}

/// Items of a case that have to be looked at.
int bad_items(const judging::CaseView& one) {
  return static_cast<int>(std::count_if(one.items.begin(), one.items.end(),
                                        [](const auto& item) { return !item.behaved_badly.empty(); }));
}

const judging::CaseView* choose_case(App& app, ClassView& view) {
  const auto& cases = view.room.page()->view.cases;
  const judging::CaseView* shown = nullptr;
  for (const auto& one : cases) {
    shown = shown == nullptr || one.exercise == view.exercise ? &one : shown;
  }
  bool first = true;
  for (const auto& one : cases) {
    const int bad = bad_items(one);
    const std::string words = one.exercise + (bad > 0 ? fmt::format(" ({})", bad) : std::string());
    if (!first) {
      flow(width_of(words.c_str()) + ImGui::GetFrameHeight());
    }
    first = false;
    if (app.widgets.choice(("items." + one.exercise).c_str(), words, &one == shown)) {
      view.exercise = one.exercise;
      shown = &one;
    }
  }
  return shown;
}

void draw_item(const judging::ItemView& item, std::size_t number) {
  ImGui::TableNextRow();
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%zu. %s", number, item.label.c_str());
  if (!item.behaved_badly.empty()) {
    ImGui::TextWrapped("Look at it: %s", item.behaved_badly.c_str());
  }
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", scoring::to_word(item.ledger).c_str());
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%.0f %% of %d", percent * item.right, item.students);
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%s", item.with_rest ? fmt::format("{:+.2f}", *item.with_rest).c_str() : "too few");
  ImGui::TableNextColumn();
  if (item.favourite_times > 0) {
    ImGui::TextWrapped("%s (%d)", item.favourite_wrong.c_str(), item.favourite_times);
  }
}

void draw_items(const judging::CaseView& one, bool only_bad) {
  if (!ImGui::BeginTable("items", 5, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Item", ImGuiTableColumnFlags_WidthStretch, 3.0F);
  ImGui::TableSetupColumn("Ledger", ImGuiTableColumnFlags_WidthStretch, 1.2F);
  ImGui::TableSetupColumn("Right", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  ImGui::TableSetupColumn("With rest", ImGuiTableColumnFlags_WidthStretch, 0.9F);
  ImGui::TableSetupColumn("Mostly wrong as", ImGuiTableColumnFlags_WidthStretch, 1.5F);
  table_headings();
  for (std::size_t i = 0; i < one.items.size(); ++i) {
    if (!only_bad || !one.items[i].behaved_badly.empty()) {
      draw_item(one.items[i], i + 1);
    }
  }
  ImGui::EndTable();
}

} // namespace

void draw_class_standard(App& app) {
  const auto& page = *app.classes->room.page();
  const auto& standard = page.view.standard;
  heading("The standard");
  if (page.all_sittings == 0) {
    ImGui::TextWrapped("This store is empty. Go to \"Take sittings in\".");
    return;
  }
  const std::string words =
      fmt::format("{} sittings, {} graded readings, {} students. {} of {} sittings with graded readings "
                  "passed at {} per mille.",
                  page.view.sittings, page.view.readings, page.view.students.size(), standard.passed,
                  standard.sittings, standard.mark);
  app.widgets.tell("figure.standard", words);
  ImGui::TextWrapped("%s", words.c_str());
  point(fmt::format("{} more would have by the mean of their readings, and missed a finding a doctor must "
                    "hear of.",
                    standard.failed_by_findings));
  point(fmt::format("{} were stopped for safety.", standard.failed_by_safety));
  point(fmt::format("{} lie close to the mark: look at those sittings as a whole.", standard.borderline));
  heading("If the pass mark moved");
  ImGui::TextWrapped("A sitting is passed when the mean of its readings, the findings missed and safety are "
                     "each good enough; none makes up for another. Findings and safety go on counting, "
                     "wherever the mark stands.");
  draw_steps(standard);
}

void draw_class_items(App& app) {
  ClassView& view = *app.classes;
  heading("Items of each case, of the first sitting each student handed in");
  const auto* one = choose_case(app, view);
  if (one == nullptr) {
    ImGui::TextWrapped("%s",
                       view.room.page()->view.cases_left_out
                           ? "In so large a store items are shown of one case at a time: choose one above, "
                             "or export the items."
                           : "No sitting has been handed in yet.");
    return;
  }
  (void)app.widgets.tick("items.bad", "Only those to be looked at", view.only_bad_items);
  ImGui::TextWrapped("%d student%s%s", one->students, one->students == 1 ? "" : "s",
                     one->kr20 ? fmt::format("; KR-20 {:.2f}, standard error of measurement {:.1f} items",
                                             *one->kr20, one->error.value_or(0))
                                     .c_str()
                               : "; too few for KR-20");
  if (view.only_bad_items && bad_items(*one) == 0) {
    ImGui::TextWrapped("No item of this case has to be looked at.");
    return;
  }
  draw_items(*one, view.only_bad_items);
  ImGui::TextWrapped("Right: share of the students who earned nearly all of the item. With rest: correlation "
                     "with the other items of the case; near 0 it tells nobody from anybody. In "
                     "brackets behind a case: how many of its items have to be looked at.");
}

void draw_class_faults(App& app) {
  const auto& faults = app.classes->room.page()->view.faults;
  heading("What it was lost by: every lost mark is charged to one fault");
  if (faults.empty()) {
    ImGui::TextWrapped("Nothing was lost.");
    return;
  }
  if (!ImGui::BeginTable("faults", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Fault", ImGuiTableColumnFlags_WidthStretch, 1.6F);
  ImGui::TableSetupColumn("Students", ImGuiTableColumnFlags_WidthStretch, 0.6F);
  ImGui::TableSetupColumn("Marks lost", ImGuiTableColumnFlags_WidthStretch, 1.2F);
  table_headings();
  const double most = faults.front().lost;
  for (const auto& fault : faults) {
    ImGui::TableNextRow();
    ImGui::TableNextColumn();
    ImGui::TextWrapped("%s", fault.label.c_str());
    ImGui::TableNextColumn();
    ImGui::Text("%d", fault.students);
    ImGui::TableNextColumn();
    draw_bar(most > 0 ? fault.lost / most : 0, std::to_string(fault.lost));
  }
  ImGui::EndTable();
  app.widgets.tell("figure.fault", fmt::format("{} {}", faults.front().lost, faults.front().label));
}

} // namespace matula::window
