#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>

namespace matula::window {

namespace {

using classroom::Playback;

ReplayView& replay_of(App& app) {
  return *app.classes->replay;
}

struct SpeedRow {
  const char* name;
  const char* label;
  double times;
};
constexpr SpeedRow speeds[] = {{"replay.x1", "x1", 1},
                               {"replay.x4", "x4", 4},
                               {"replay.x16", "x16", 16},
                               {"replay.x60", "x60", 60},
                               {"replay.x600", "x600", 600}};

void set_speed(ReplayView& view, double times) {
  view.playback.set_speed(times);
  view.speed = view.playback.speed();
}

void play_or_pause(ReplayView& view) {
  if (view.playback.playing()) {
    view.playback.pause();
    return;
  }
  if (view.playback.at_end()) {
    view.playback.jump(0);
  }
  view.playback.play();
}

/// Anything that moves the playback by hand.
template <class Move> void move(ReplayView& view, Move move_it) {
  move_it(view.playback);
  view.changed = true;
}

void step_vessel(ReplayView& view, int by) {
  if (!view.scene || view.scene->vessels.empty()) {
    return;
  }
  const auto& all = view.scene->vessels;
  const auto here =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.name == view.vessel; });
  const auto count = static_cast<int>(all.size());
  const int at = here == all.end() ? 0 : static_cast<int>(here - all.begin());
  view.vessel = all[static_cast<std::size_t>((at + by + count) % count)].name;
}

/// Looks by oneself from now on, beginning with how the student did.
void look_oneself(ReplayView& view) {
  if (view.as_the_student) {
    view.as_the_student = false;
    view.vessel = view.playback.in_hand();
    view.view = view.playback.view();
  }
}

void set_card(ReplayView& view, appearance::Card card) {
  look_oneself(view);
  view.view.card = card;
  view.changed = true;
}

void leave(App& app) {
  app.classes->replay.reset();
  app.focus_screen = 3;
}

void handle_replay_keys(ReplayView& view) {
  const auto pressed = [](int key, bool again = false) { return ImGui::IsKeyPressed(key, again); };
  if (ImGui::GetIO().WantTextInput) {
    return;
  }
  if (pressed(GLFW_KEY_R)) {
    play_or_pause(view);
  }
  if (pressed(GLFW_KEY_N, true)) {
    move(view, [](Playback& p) { p.step(); });
  }
  if (pressed(GLFW_KEY_M, true)) {
    move(view, [](Playback& p) { p.step_back(); });
  }
  if (pressed(GLFW_KEY_HOME)) {
    move(view, [](Playback& p) { p.jump(0); });
  }
  if (pressed(GLFW_KEY_END)) {
    move(view, [](Playback& p) { p.jump(p.lines().size()); });
  }
  if (pressed(GLFW_KEY_W)) {
    set_card(view, appearance::Card::White);
  }
  if (pressed(GLFW_KEY_B)) {
    set_card(view, appearance::Card::Black);
  }
  if (pressed(GLFW_KEY_P)) {
    set_card(view, appearance::Card::Printed);
  }
  if (pressed(GLFW_KEY_V)) {
    look_oneself(view);
    step_vessel(view, 1);
    view.changed = true;
  }
  const std::pair<int, ReplayTab> tabs[] = {{GLFW_KEY_L, ReplayTab::Line},
                                            {GLFW_KEY_A, ReplayTab::Lines},
                                            {GLFW_KEY_S, ReplayTab::Worksheet},
                                            {GLFW_KEY_D, ReplayTab::Papers}};
  for (const auto& [key, tab] : tabs) {
    if (pressed(key)) {
      view.tab = tab;
      view.scrolled_to.reset();
      view.focus_panel = 1;
    }
  }
  if (pressed(GLFW_KEY_T)) {
    view.focus_strip = 1;
  }
}

/// First row: where it stands, and what moves it.
void draw_bar_row(App& app, ReplayView& view) {
  Playback& playback = view.playback;
  if (view.focus_strip > 0) {
    --view.focus_strip;
    app.widgets.focus_next();
  }
  if (app.widgets.button("replay.play", playback.playing() ? "Pause (R)" : "Play (R)")) {
    play_or_pause(view);
  }
  ImGui::SameLine();
  if (app.widgets.button("replay.start", "Start", playback.done() > 0)) {
    move(view, [](Playback& p) { p.jump(0); });
  }
  ImGui::SameLine();
  if (app.widgets.button("replay.back", "Back (M)", playback.done() > 0)) {
    move(view, [](Playback& p) { p.step_back(); });
  }
  ImGui::SameLine();
  if (app.widgets.button("replay.step", "Next (N)", playback.done() < playback.lines().size())) {
    move(view, [](Playback& p) { p.step(); });
  }
  ImGui::SameLine();
  if (app.widgets.button("replay.end", "End", playback.done() < playback.lines().size())) {
    move(view, [](Playback& p) { p.jump(p.lines().size()); });
  }
  flow(number_width() + width_of("to line"));
  if (app.widgets.number("replay.to", view.to_line, 0, static_cast<double>(playback.lines().size()),
                         number_width(), "%.0f")) {
    move(view, [&view](Playback& p) { p.jump(static_cast<std::size_t>(view.to_line)); });
  }
  ImGui::SameLine();
  ImGui::TextUnformatted("to line");
  flow(width_of("Leave"));
  if (app.widgets.button("replay.leave", "Leave")) {
    leave(app);
  }
}

/// Second row: the speed.
void draw_speed_row(App& app, ReplayView& view) {
  bool first = true;
  for (const SpeedRow& row : speeds) {
    if (!first) {
      flow(width_of(row.label) + ImGui::GetFrameHeight());
    }
    first = false;
    if (app.widgets.choice(row.name, row.label, view.playback.speed() == row.times)) {
      set_speed(view, row.times);
    }
  }
  flow(number_width() + width_of("times"));
  if (app.widgets.number("replay.speed", view.speed, 0.1, 36000, number_width(), "%g")) {
    set_speed(view, view.speed);
  }
  ImGui::SameLine();
  ImGui::TextUnformatted("times");
  const std::string words =
      fmt::format("At {} of {}", say_time(view.playback.time_s()), say_time(view.playback.end_s()));
  flow(width_of(words.c_str()));
  ImGui::TextUnformatted(words.c_str());
}

/// Where the sitting stands, below the bench: the student and the line in words.
void draw_line_in_words(App& app, const ReplayView& view, const render::Rect& area) {
  const Pane pane("replay_line", area, ImGuiWindowFlags_NoFocusOnAppearing);
  const auto& playback = view.playback;
  const auto at = playback.at();
  ImGui::PushTextWrapPos(0);
  if (!at) {
    ImGui::Text("%s. The specimen has arrived; nothing has been done yet.",
                app.classes->room.sitting()->patient.c_str());
  } else {
    const auto& line = playback.lines()[*at];
    ImGui::Text("%s  The student %s.", say_time(line.time_s).c_str(), line.words.c_str());
    if (!line.answer.empty()) {
      ImGui::TextUnformatted(line.answer.c_str());
    }
  }
  ImGui::PopTextWrapPos();
}

void refresh(ReplayView& view) {
  const auto& eyes = view.as_the_student ? view.playback.view() : view.view;
  if (view.changed || !view.scene || view.seen_at_s != view.playback.time_s()) {
    view.scene = view.playback.scene(eyes);
    view.seen_at_s = view.playback.time_s();
    view.changed = false;
  }
}

void tell_replay(App& app, const ReplayView& view) {
  const auto& playback = view.playback;
  app.widgets.tell("replay.line", std::to_string(playback.done()));
  app.widgets.tell("replay.lines", std::to_string(playback.lines().size()));
  app.widgets.tell("replay.time_s", fmt::format("{:.3f}", playback.time_s()));
  app.widgets.tell("replay.playing", playback.playing() ? "1" : "0");
  app.widgets.tell("replay.state", fmt::format("{:016x}", playback.state_hash()));
  const auto at = playback.at();
  app.widgets.tell("replay.words", at ? playback.lines()[*at].words : "");
}

/// The bench takes no hands, only eyes: a click on a vessel looks at it.
void draw_replay_bench(App& app, ReplayView& view, const render::Rect& area) {
  const Pane pane("replay_bench", area,
                  ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoNav |
                      ImGuiWindowFlags_NoFocusOnAppearing);
  const auto where = render::layout(*view.scene, replay_show(app), area);
  ImGui::SetCursorScreenPos({area.x, area.y});
  const bool clicked = ImGui::InvisibleButton("eyes", {area.w, area.h});
  if (!ImGui::IsItemHovered()) {
    return;
  }
  const ImVec2 pointer = ImGui::GetMousePos();
  for (const auto& [name, place] : where.vessels) {
    if (place.contains(pointer.x, pointer.y)) {
      ImGui::SetTooltip("%s: click to look at it", say_vessel(name).c_str());
      if (clicked) {
        look_oneself(view);
        view.vessel = name;
        view.changed = true;
      }
      return;
    }
  }
}

} // namespace

void begin_replay(App& app) {
  ClassView& view = *app.classes;
  if (!view.room.sitting()) {
    return;
  }
  view.replay.emplace(view.room.sitting()->playback());
}

void draw_replay(App& app, float width, float height) {
  ReplayView& view = replay_of(app);
  handle_replay_keys(view);
  refresh(view);
  tell_replay(app, view);
  const Regions where = regions(width, height, app.aids.text_scale);
  {
    const Pane pane("replay_strip", where.strip,
                    ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoScrollWithMouse);
    draw_bar_row(app, view);
    if (!app.classes->replay) {
      return;
    }
    draw_speed_row(app, view);
  }
  refresh(view);
  draw_replay_bench(app, view, where.bench);
  {
    const Pane pane("replay_panel", where.panel, ImGuiWindowFlags_NoFocusOnAppearing);
    draw_replay_panel(app);
  }
  draw_line_in_words(app, view, where.message);
}

void run_replay(App& app, double wall_s) {
  ReplayView& view = replay_of(app);
  if (view.playback.playing()) {
    view.wall_s += wall_s;
    view.playback.advance(wall_s);
  }
}

const bench::Scene* replay_scene(const App& app) {
  const bool shown = at_class(app) && app.classes->replay && app.classes->replay->scene;
  return shown ? &*app.classes->replay->scene : nullptr;
}

render::Show replay_show(const App& app) {
  const ReplayView& view = *app.classes->replay;
  render::Show show;
  show.in_hand = view.as_the_student ? view.playback.in_hand() : view.vessel;
  show.eye_mm = view.as_the_student ? view.playback.eye_mm() : 0;
  show.seconds = app.aids.still ? 0 : view.wall_s;
  show.boil_seconds = show.seconds;
  std::string surname = app.classes->room.sitting()->patient;
  surname = surname.substr(0, std::min(surname.find(" ("), surname.find(',')));
  show.labels["specimen"] = surname.substr(surname.rfind(' ') + 1);
  for (const std::string& reagent : app.classes->room.sitting()->shelf) {
    show.labels[reagent] = app.ground.bottle_label(reagent);
  }
  show.labels["tag:specimen"] = "Specimen";
  show.labels["tag:jar"] = "Jar";
  show.labels["tag:water"] = "Water";
  show.labels["tag:esbach"] = "Esbach";
  return show;
}

} // namespace matula::window
