#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/paper_card.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

namespace matula::window {

namespace {

using classroom::Charged;
using classroom::Line;

void draw_charged(const Charged& one) {
  const auto& mark = one.mark;
  const std::string marks =
      mark.possible > 0 ? fmt::format("{} of {}", mark.earned, mark.possible) : std::string("note");
  point(fmt::format("{}: {}{}", marks, mark.label, one.how.empty() ? "" : " (" + one.how + ")"));
  if (!mark.expected.empty() && mark.earned < mark.possible) {
    ImGui::TextWrapped("Right: %s", mark.expected.c_str());
  }
  if (!mark.reason.empty()) {
    ImGui::TextWrapped("%s", mark.reason.c_str());
  }
  if (!mark.root_words.empty() && mark.root != mark.item) {
    ImGui::TextWrapped("Charged to: %s", mark.root_words.c_str());
  }
}

void draw_line(App& app, ReplayView& view) {
  const auto at = view.playback.at();
  if (view.scrolled_to != at) {
    view.scrolled_to = at;
    ImGui::SetScrollY(0); // Another line begins at its beginning.
  }
  if (!at) {
    ImGui::TextWrapped("Before the first line. Play, or go on to the next line.");
    return;
  }
  const Line& line = view.playback.lines()[*at];
  heading(fmt::format("Line {} of {}, bench time {}", *at + 1, view.playback.lines().size(),
                      say_time(line.time_s))
              .c_str());
  ImGui::TextWrapped("The student %s.", line.words.c_str());
  if (!line.answer.empty()) {
    ImGui::TextWrapped("%s", line.answer.c_str());
  }
  ImGui::TextWrapped("Gloves %s, goggles %s.", view.playback.gloves() ? "on" : "off",
                     view.playback.goggles() ? "on" : "off");
  heading("Marks at this line");
  app.widgets.tell("replay.marks", std::to_string(line.marks.size()));
  if (line.marks.empty()) {
    ImGui::TextWrapped("None.");
  }
  for (const Charged& one : line.marks) {
    draw_charged(one);
  }
  if (view.playback.at_end() && !view.playback.elsewhere().empty()) {
    heading("Marks at no line: nothing was written, or nothing happened");
    for (const Charged& one : view.playback.elsewhere()) {
      draw_charged(one);
    }
  }
}

/// Every line in which the student did something; a press goes there.
void draw_lines(App& app, ReplayView& view) {
  const auto& lines = view.playback.lines();
  const auto at = view.playback.at();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Line& line = lines[i];
    if (line.tick) {
      continue;
    }
    const int lost = line.lost();
    const std::string label = fmt::format("{} {}", i + 1, say_time(line.time_s));
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(at == i ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(fmt::format("line.{}", i + 1).c_str(), label)) {
      view.playback.jump(i + 1);
      view.changed = true;
      view.scrolled_to = i;
    }
    ImGui::PopStyleColor();
    if (at == i && view.scrolled_to != i) {
      ImGui::SetScrollHereY(0.4F);
      view.scrolled_to = i;
    }
    ImGui::SameLine();
    ImGui::AlignTextToFramePadding();
    ImGui::TextWrapped("%s%s%s", line.refused ? "(not done) " : "", line.words.c_str(),
                       lost > 0 ? fmt::format("  [{} lost]", lost).c_str() : "");
  }
}

void draw_worksheet(const ReplayView& view) {
  heading("The worksheet as it stands at this line");
  if (view.playback.worksheet().empty()) {
    ImGui::TextWrapped("Nothing has been written yet.");
  }
  if (!ImGui::BeginTable("worksheet", 2, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  for (const auto& [item, value] : view.playback.worksheet()) {
    ImGui::TableNextRow();
    cell(view.playback.name_of(item));
    cell(view.playback.value_of(item, value));
  }
  ImGui::EndTable();
}

/// Every paper that lies there, the one used last first.
void draw_papers(App& app, const bench::Scene& scene) {
  if (scene.papers.empty()) {
    ImGui::TextWrapped("No paper lies on the bench.");
  }
  for (auto paper = scene.papers.rbegin(); paper != scene.papers.rend(); ++paper) {
    heading(
        fmt::format("{} ({}), wet for {}", paper->label, paper->name, say_time(paper->wet_for_s)).c_str());
    ImGui::PushID(paper->name.c_str());
    draw_paper_card(app, scene, *paper);
    ImGui::PopID();
  }
}

void scroll_by_keys() {
  constexpr float part = 0.85F; // Some lines stay in sight.
  const float page = part * ImGui::GetWindowHeight();
  if (ImGui::IsKeyPressed(GLFW_KEY_PAGE_DOWN)) {
    ImGui::SetScrollY(ImGui::GetScrollY() + page);
  }
  if (ImGui::IsKeyPressed(GLFW_KEY_PAGE_UP)) {
    ImGui::SetScrollY(ImGui::GetScrollY() - page);
  }
}

void choose_card(App& app, ReplayView& view, const char* name, const char* label, appearance::Card card) {
  const auto& eyes = view.as_the_student ? view.playback.view() : view.view;
  if (app.widgets.choice(name, label, eyes.card == card)) {
    if (view.as_the_student) {
      view.as_the_student = false;
      view.vessel = view.playback.in_hand();
      view.view = view.playback.view();
    }
    view.view.card = card;
    view.changed = true;
  }
}

void draw_eyes(App& app, ReplayView& view) {
  if (app.widgets.tick("replay.eyes", "Look as the student looked", view.as_the_student)) {
    view.vessel = view.playback.in_hand();
    view.view = view.playback.view();
    view.changed = true;
  }
  choose_card(app, view, "replay.white", "white (W)", appearance::Card::White);
  flow(width_of("black (B)") + ImGui::GetFrameHeight());
  choose_card(app, view, "replay.black", "black (B)", appearance::Card::Black);
  flow(width_of("printed card (P)") + ImGui::GetFrameHeight());
  choose_card(app, view, "replay.printed", "printed card (P)", appearance::Card::Printed);
  flow(width_of("another vessel: V"));
  ImGui::TextDisabled("another vessel: V");
}

} // namespace

void draw_replay_panel(App& app) {
  ReplayView& view = *app.classes->replay;
  struct TabRow {
    ReplayTab tab;
    const char* name;
    const char* label;
  };
  constexpr TabRow tabs[] = {{ReplayTab::Line, "replay.tab.line", "This line (L)"},
                             {ReplayTab::Lines, "replay.tab.lines", "All lines (A)"},
                             {ReplayTab::Worksheet, "replay.tab.sheet", "Worksheet (S)"},
                             {ReplayTab::Papers, "replay.tab.papers", "Papers (D)"}};
  if (view.focus_panel > 0) {
    --view.focus_panel;
    app.widgets.focus_next();
  }
  for (const TabRow& row : tabs) {
    if (row.tab != ReplayTab::Line) {
      flow(width_of(row.label));
    }
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(view.tab == row.tab ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(row.name, row.label)) {
      view.tab = row.tab;
      view.scrolled_to.reset();
    }
    ImGui::PopStyleColor();
  }
  draw_eyes(app, view);
  ImGui::Separator();
  ImGui::BeginChild("replay_tab", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
  scroll_by_keys();
  if (view.tab == ReplayTab::Line) {
    draw_line(app, view);
  } else if (view.tab == ReplayTab::Lines) {
    draw_lines(app, view);
  } else if (view.tab == ReplayTab::Worksheet) {
    draw_worksheet(view);
  } else {
    draw_papers(app, *view.scene);
  }
  ImGui::EndChild();
}

} // namespace matula::window
