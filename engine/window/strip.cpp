#include "engine/window/exam_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include "engine/scenario/unwritten.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace matula::window {

namespace {

struct WaitRow {
  const char* name;
  const char* label;
  double seconds;
};
constexpr WaitRow waits[] = {{"wait.10", "10 s", 10},    {"wait.30", "30 s", 30},
                             {"wait.60", "1 min", 60},   {"wait.120", "2 min", 120},
                             {"wait.300", "5 min", 300}, {"wait.600", "10 min", 600}};

/// How far a wait has come, or why the clock stands still.
void draw_clock_state(App& app) {
  if (!app.clock.waiting()) {
    const char* words = app.clock.running() || app.something_heats() ? "Time runs as on the wall."
                                                                     : "Time stands still while you think.";
    flow(width_of(words));
    ImGui::TextDisabled("%s", words);
    return;
  }
  flow(width_of("Stop (Esc)") + ImGui::GetFontSize() * 8);
  if (app.widgets.button("wait.stop", "Stop (Esc)")) {
    app.clock.stop_waiting();
  }
  ImGui::SameLine();
  const double left = app.clock.until_s() - app.desk->time_s();
  ImGui::ProgressBar(static_cast<float>(app.clock.progress(app.desk->time_s())), {-1, 0},
                     ("waiting, " + say_time(left) + " left").c_str());
}

void draw_waits(App& app) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Wait");
  for (const WaitRow& row : waits) {
    flow(width_of(row.label));
    if (app.widgets.button(row.name, row.label)) {
      app.clock.wait_until(app.desk->time_s(), app.desk->time_s() + row.seconds);
    }
  }
  draw_clock_state(app);
}

void say_what_is_missing(App& app) {
  const auto missing = scenario::unwritten(app.desk->brief(), app.desk->worksheet());
  if (missing.empty()) {
    app.say("Everything asked for is written down. After handing in nothing can be changed.");
    return;
  }
  app.say("Not written yet: " + fmt::format("{}", fmt::join(missing, "; ")) + ".");
}

/// True when the case was handed in.
bool draw_hand_in(App& app) {
  ImGui::SameLine();
  if (!app.marks_wanted) {
    if (app.widgets.button("hand_in", "Hand in")) {
      app.marks_wanted = true;
      say_what_is_missing(app);
      app.focus_hand_in = true; // The question takes this button's place in the next frame.
    }
    return false;
  }
  if (app.focus_hand_in) {
    app.focus_hand_in = false;
    app.widgets.focus_next();
  }
  if (app.widgets.button("hand_in.yes",
                         app.desk->examination() ? "Yes, hand in and close" : "Yes, hand in and mark")) {
    app.marks_wanted = false;
    app.focus_screen = 3;
    app.clock = Clock{};
    app.say(app.desk->finish(), true);
    return true;
  }
  ImGui::SameLine();
  if (app.widgets.button("hand_in.no", "Not yet")) {
    app.marks_wanted = false;
  }
  return false;
}

} // namespace

void draw_strip(App& app, const render::Rect& area) {
  const Pane pane("strip", area, ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
  if (app.focus_strip) {
    app.focus_strip = false;
    app.widgets.focus_next();
  }
  if (app.widgets.button("leave", "Leave")) {
    app.close_case();
    return;
  }
  ImGui::SameLine();
  ImGui::Text("Bench time %s", say_time(app.desk->time_s()).c_str());
  ImGui::SameLine();
  if (app.widgets.button("run", app.clock.running() ? "Let it stand still (R)" : "Let time run (R)")) {
    app.clock.set_running(!app.clock.running());
  }
  if (draw_hand_in(app)) {
    return;
  }
  if (!app.marks_wanted) {
    ImGui::SameLine();
    draw_text_size(app);
  }
  const std::string left = app.desk->examination() ? say_time_left(app) : "";
  if (!left.empty()) {
    app.widgets.tell("time_left", left);
    flow(width_of(left.c_str()));
    ImGui::TextUnformatted(left.c_str());
  }
  const std::string& title = app.desk->brief().title;
  if (width_of(title.c_str()) < room_after()) {
    ImGui::SameLine();
    ImGui::TextDisabled("%s", title.c_str());
  }
  draw_waits(app);
}

} // namespace matula::window
