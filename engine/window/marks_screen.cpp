#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pads.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>
#include <imgui.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace matula::window {

namespace {

void draw_report(const scoring::Report& report) {
  draw_ledgers(report);
  heading("What a careful reader would have come to");
  ImGui::TextWrapped("%s", report.debrief.c_str());
}

/// Follows the last test on the list.
int sheet_of(const scoring::Report& report) {
  return static_cast<int>(report.tubes.size());
}

void forget_tubes(App& app) {
  app.marks_tubes.clear();
  app.marks_captions.clear();
}

void draw_card_choice(App& app, const char* name, const char* label, appearance::Card card) {
  if (app.widgets.choice(name, label, app.marks_view.card == card)) {
    app.marks_view.card = card;
    forget_tubes(app);
  }
}

/// Each over its own half of the picture below.
void draw_captions(const scoring::ByTheBook& test) {
  const bool done = !test.learner_vessel.empty();
  if (!ImGui::BeginTable("captions", done ? 2 : 1, ImGuiTableFlags_SizingStretchSame)) {
    return;
  }
  if (done) {
    ImGui::TableNextColumn();
    ImGui::TextWrapped("Your %s as you read it, at %s. A practised reader: %s.",
                       say_vessel(test.learner_vessel).c_str(), say_time(test.learner_read_at_s).c_str(),
                       test.learner_tube_word.c_str());
  }
  ImGui::TableNextColumn();
  ImGui::TextWrapped("%sBy the book: %s.", done ? "" : "You did not do this test. ",
                     test.reference_word.c_str());
  ImGui::EndTable();
}

/// Why the tube came out as it did.
void draw_why(const std::vector<attribution::Explanation>& why, const std::string& test) {
  for (const auto& one : why) {
    if (one.test == test && !one.words.empty()) {
      ImGui::TextWrapped("%s", one.words.c_str());
      ImGui::Spacing();
    }
  }
}

/// Pads for a test on paper, each in its half as the captions are.
void draw_pads(const desk::PadPair& pads) {
  if (!ImGui::BeginTable("pads", pads.learner ? 2 : 1, ImGuiTableFlags_SizingStretchSame)) {
    return;
  }
  for (const auto* pad : {&pads.learner, &pads.book}) {
    if (*pad) {
      ImGui::TableNextColumn();
      draw_near(**pad, {});
    }
  }
  ImGui::EndTable();
  if (!pads.row.fields.empty()) {
    ImGui::TextUnformatted("The reference card");
    const ImVec2 at = ImGui::GetCursorScreenPos();
    draw_fields(pads.row, at, ImGui::GetContentRegionAvail().x, ImGui::GetTextLineHeight() * 3);
  }
}

/// Which test to show beside its marks, or the whole worksheet.
void draw_test_choice(App& app, const scoring::Report& report) {
  if (app.focus_tubes > 0) {
    --app.focus_tubes;
    app.widgets.focus_next();
  }
  for (int i = 0; i < static_cast<int>(report.tubes.size()); ++i) {
    if (i > 0) {
      flow(width_of(report.tubes[static_cast<std::size_t>(i)].title.c_str()) + ImGui::GetFrameHeight());
    }
    const auto& test = report.tubes[static_cast<std::size_t>(i)];
    if (app.widgets.choice(("marks." + test.test).c_str(), test.title.c_str(), app.marked_test == i)) {
      app.marked_test = i;
      forget_tubes(app);
    }
  }
  const char* words = "The worksheet";
  flow(width_of(words) + ImGui::GetFrameHeight());
  if (app.widgets.choice("marks.worksheet", words, app.marked_test == sheet_of(report))) {
    app.marked_test = sheet_of(report);
    forget_tubes(app);
  }
}

/// The learner's own tube among those of the sittings before, by strength.
void find_earlier(App& app, const scoring::ByTheBook& test) {
  constexpr std::size_t most = 4;
  auto earlier = app.desk->earlier_tubes(test, app.marks_view, most);
  forget_tubes(app);
  for (auto& tube : earlier) {
    app.marks_captions.push_back(fmt::format("{}: you wrote {}, shown {}", tube.sitting,
                                             tube.written.empty() ? "nothing" : tube.written, tube.shown));
    app.marks_tubes.push_back(std::move(tube.looks));
  }
}

void draw_earlier(App& app, const scoring::ByTheBook& test) {
  if (app.marks_tubes.empty() && app.marks_captions.empty()) {
    find_earlier(app, test);
  }
  if (app.marks_tubes.size() <= 1) {
    ImGui::TextWrapped("You have no earlier tube of this test that was handed in.");
  }
  if (ImGui::BeginTable("earlier", std::max(static_cast<int>(app.marks_captions.size()), 1),
                        ImGuiTableFlags_SizingStretchSame)) {
    for (const std::string& words : app.marks_captions) {
      ImGui::TableNextColumn();
      ImGui::TextWrapped("%s", words.c_str());
    }
    ImGui::EndTable();
  }
  draw_picture(app, 0, app.marks_tubes);
}

void draw_tubes(App& app, const scoring::Report& report) {
  draw_card_choice(app, "marks.white", "white", appearance::Card::White);
  ImGui::SameLine();
  draw_card_choice(app, "marks.black", "black", appearance::Card::Black);
  flow(width_of("printed card") + ImGui::GetFrameHeight());
  draw_card_choice(app, "marks.printed", "printed card", appearance::Card::Printed);
  const auto& test = report.tubes[static_cast<std::size_t>(app.marked_test)];
  if (!test.learner_vessel.empty()) {
    if (app.widgets.tick("marks.earlier", "among my earlier tubes", app.marks_earlier)) {
      forget_tubes(app);
    }
    if (app.marks_earlier) {
      draw_earlier(app, test);
      return;
    }
  }
  if (app.marks_tubes.empty()) {
    app.marks_pads = app.desk->pads_of(test);
    app.marks_tubes = app.desk->tubes_of(test, app.marks_view);
  }
  draw_captions(test);
  draw_why(app.desk->why(), test.test);
  if (app.marks_pads) {
    draw_pads(*app.marks_pads);
    return;
  }
  draw_picture(app, 0, app.marks_tubes);
}

/// Where there is no tube to show, the worksheet alone.
void draw_beside(App& app, const scoring::Report& report) {
  app.marked_test = std::min(app.marked_test, sheet_of(report)); // The last case had more tests, perhaps.
  if (!report.tubes.empty()) {
    draw_test_choice(app, report);
  }
  if (app.marked_test == sheet_of(report)) {
    draw_why(app.desk->why(), "gravity");
    draw_marks_sheet(report);
  } else {
    draw_tubes(app, report);
  }
}

/// The arrow keys do not cross from one pane into another.
void change_half(App& app) {
  if (!ImGui::IsKeyPressed(GLFW_KEY_F6, false)) {
    return;
  }
  app.at_tubes = !app.at_tubes;
  (app.at_tubes ? app.focus_tubes : app.focus_screen) = 3;
}

} // namespace

void draw_marks_screen(App& app, const render::Rect& area) {
  const scoring::Report& report = *app.desk->report();
  const float left = std::floor(area.w * 0.56F);
  {
    const Pane pane("marks", {area.x, area.y, left, area.h});
    if (app.focus_screen > 0) {
      --app.focus_screen;
      app.widgets.focus_next();
    }
    if (app.widgets.button("marks.close", "Back to the cases")) {
      app.desk.reset();
      app.scene.reset();
      forget_tubes(app);
      app.marked_test = 0;
      app.at_tubes = false;
      app.message.clear();
      app.focus_screen = 3;
      find_cases(app);
      return;
    }
    ImGui::SameLine();
    ImGui::TextWrapped("%s", app.desk->brief().title.c_str()); // Cut off otherwise where the text is large.
    if (!app.message.empty()) {
      ImGui::TextWrapped("%s", app.message.c_str());
    }
    if (!report.tubes.empty()) {
      ImGui::TextDisabled("F6: the keyboard goes to the other half, and back");
      change_half(app);
    }
    ImGui::BeginChild("ledgers", {0, 0}, false, ImGuiWindowFlags_NavFlattened);
    draw_report(report);
    ImGui::EndChild();
  }
  const Pane pane("tubes", {area.x + left, area.y, area.w - left, area.h},
                  ImGuiWindowFlags_NoFocusOnAppearing);
  draw_beside(app, report);
}

} // namespace matula::window
