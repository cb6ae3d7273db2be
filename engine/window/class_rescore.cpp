#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

constexpr std::size_t most_rows = 200; ///< Of changed sittings on the page.
constexpr std::size_t letters = 8;     ///< Of a fingerprint, enough to tell a few apart.

void begin(ClassView& view, bool on_trial) {
  classroom::RescoreOrder order;
  order.scope = view.room.page()->scope;
  order.scenario = place_of(view, view.rescore.scenario);
  order.rules = place_of(view, view.rescore.rules);
  order.on_trial = on_trial;
  order.now_s = clock_s();
  view.room.mark_anew(order);
}

const char* passed(const records::SittingRow& row) {
  return row.standing.passed ? "passed" : "not passed";
}

bool other_side(const records::Rescored& one) {
  return one.before.standing.passed != one.now.standing.passed;
}

std::string of(const std::optional<int>& earned, const std::optional<int>& possible) {
  return earned && possible ? fmt::format("{} of {}", *earned, *possible) : std::string("nothing");
}

void draw_changed(const ClassView& view, const records::Rescored& one) {
  ImGui::TableNextRow();
  cell(fmt::format("{}: {}, {}", one.now.number, view.room.page()->call(one.now.pseudonym, view.by_name),
                   one.now.exercise));
  cell(fmt::format("{} to {}", one.before.standing.mean, one.now.standing.mean));
  cell(other_side(one) ? fmt::format("{}, now {}", passed(one.before), passed(one.now)) : passed(one.now));
  ImGui::TableNextColumn();
  ImGui::AlignTextToFramePadding();
  for (const auto& change : one.changes) {
    ImGui::TextWrapped("%s: %s, now %s", change.label.c_str(),
                       of(change.earned_before, change.possible_before).c_str(),
                       of(change.earned_now, change.possible_now).c_str());
  }
  if (one.changes.empty()) {
    ImGui::TextWrapped("no mark; the pass rule alone");
  }
}

/// Those on the other side of passing first.
void draw_all_changed(App& app, ClassView& view, const records::RescoreSum& sum) {
  std::vector<const records::Rescored*> rows;
  for (const auto& one : sum.changed) {
    if (!view.rescore.only_passing || other_side(one)) {
      rows.push_back(&one);
    }
  }
  std::stable_partition(rows.begin(), rows.end(), [](const auto* one) { return other_side(*one); });
  (void)app.widgets.tick("rescore.only", "Only those who pass under one and not under the other",
                         view.rescore.only_passing);
  app.widgets.tell("rescore.rows", std::to_string(rows.size()));
  if (rows.empty() ||
      !ImGui::BeginTable("changed", 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Sitting", ImGuiTableColumnFlags_WidthStretch, 1.5F);
  ImGui::TableSetupColumn("Mean", ImGuiTableColumnFlags_WidthStretch, 0.7F);
  ImGui::TableSetupColumn("Standing", ImGuiTableColumnFlags_WidthStretch, 1.1F);
  ImGui::TableSetupColumn("Marks that came out otherwise", ImGuiTableColumnFlags_WidthStretch, 2.0F);
  table_headings();
  for (std::size_t i = 0; i < rows.size() && i < most_rows; ++i) {
    draw_changed(view, *rows[i]);
  }
  ImGui::EndTable();
  if (rows.size() > most_rows) {
    ImGui::TextWrapped("And %zu more; \"matula class rescore\" prints all.", rows.size() - most_rows);
  }
}

void draw_end(App& app, ClassView& view, const classroom::RescoreEnd& end) {
  heading(end.on_trial ? "On trial" : "Marked anew");
  app.widgets.tell("rescore.end", end.words());
  ImGui::TextWrapped("%s", end.words().c_str());
  for (const auto& refused : end.sum.refused) {
    point(fmt::format("{} could not be marked: {}", refused.file, refused.why));
  }
  if (!end.sum.changed.empty()) {
    draw_all_changed(app, view, end.sum);
  }
}

void draw_version(App& app, ClassView& view, const records::Version& one, std::size_t number) {
  ImGui::TableNextRow();
  cell(one.exercise);
  cell(fmt::format(
      "{}: rules {}, world {}, program {}; {}", classroom::day_in_words(one.scored_s),
      one.rubric.hash.substr(0, letters), one.rubric.world.substr(0, letters), one.rubric.program,
      one.scenario_name.empty() ? "its own text" : "another text, " + one.scenario_name.substr(0, letters)));
  cell(fmt::format("{} of {}", one.passed, one.sittings));
  ImGui::TableNextColumn();
  if (one.counting == one.sittings) {
    ImGui::AlignTextToFramePadding();
    ImGui::TextWrapped("counts");
  } else {
    if (app.widgets.button(fmt::format("version.{}", number).c_str(), "Let it count",
                           !view.room.work_state().running)) {
      view.room.let_count(one);
    }
    if (one.counting > 0) {
      ImGui::TextWrapped("counts for %d", one.counting);
    }
  }
  app.widgets.tell(fmt::format("version.{}", number),
                   fmt::format("{} {}/{} counting {}", one.exercise, one.passed, one.sittings, one.counting));
}

void draw_versions(App& app, ClassView& view) {
  heading("Versions of the marks, all of them kept");
  view.room.want_versions();
  if (!view.room.versions()) {
    ImGui::TextWrapped("%s", view.room.reading() ? "Being read." : "They could not be read.");
    return;
  }
  const auto versions = *view.room.versions(); // A press asks for new ones.
  if (versions.empty() ||
      !ImGui::BeginTable("versions", 4, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Case", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  ImGui::TableSetupColumn("Marked by", ImGuiTableColumnFlags_WidthStretch, 2.2F);
  ImGui::TableSetupColumn("Pass", ImGuiTableColumnFlags_WidthStretch, 0.7F);
  ImGui::TableSetupColumn("Counts", ImGuiTableColumnFlags_WidthStretch, 0.8F);
  table_headings();
  for (std::size_t i = 0; i < versions.size(); ++i) {
    draw_version(app, view, versions[i], i + 1);
  }
  ImGui::EndTable();
}

} // namespace

void draw_class_rescore(App& app) {
  ClassView& view = *app.classes;
  const auto& page = *view.room.page();
  heading("Mark anew what is looked at now");
  ImGui::TextWrapped(
      "%zu of %d sittings%s%s%s%s are replayed and marked once more: by the rules of this "
      "program, or by those of another folder, and under their own text of the case or a "
      "corrected one. Only weights, tolerances, marking, decisions, laboratory rules and words "
      "may differ in it. Try it first: a trial says what would come of it and stores nothing.",
      page.sittings.size(), page.all_sittings, page.scope.exercise.empty() ? "" : ", case ",
      page.scope.exercise.c_str(), page.scope.label.empty() ? "" : ", label ", page.scope.label.c_str());
  choose_place(app, "rescore.scenario", "Corrected case (KEY.toml); empty: each sitting's own", ".toml",
               view.rescore.scenario);
  (void)typed(app, "rescore.rules",
              "Folder with changed rules (a whole assets folder); empty: this program's", view.rescore.rules);
  const bool running = view.room.work_state().running;
  if (app.widgets.button("rescore.try", "Try it", !running && page.all_sittings > 0)) {
    begin(view, true);
  }
  flow(width_of("Mark anew, and keep both"));
  if (app.widgets.button("rescore.begin", "Mark anew, and keep both", !running && page.all_sittings > 0)) {
    begin(view, false);
  }
  if (view.room.rescore_end()) {
    draw_end(app, view, *view.room.rescore_end());
  }
  draw_versions(app, view);
}

} // namespace matula::window
