#include "engine/window/author.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/exam_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/practice_view.hpp"

#include <fmt/format.h>
#include <imgui.h>

#include <cmath>

namespace matula::window {

namespace {

struct TabRow {
  Tab tab;
  const char* name;
  const char* label;
  void (*draw)(App&);
};

// Every tab of the side panel, in the order shown.
constexpr TabRow tabs[] = {
    {Tab::Reception, "tab.reception", "Reception", draw_reception_tab},
    {Tab::Request, "tab.request", "Request", draw_request_tab},
    {Tab::Do, "tab.do", "Do", draw_do_tab},
    {Tab::Papers, "tab.papers", "Papers", draw_papers_tab},
    {Tab::Worksheet, "tab.worksheet", "Worksheet", draw_worksheet_tab},
    {Tab::Controls, "tab.controls", "Controls", draw_controls_tab},
    {Tab::Help, "tab.help", "Help", draw_help_tab},
};

/// Buttons rather than ImGui's tab bar: they break into a second row instead of losing their words.
void draw_tab_row(App& app) {
  bool first = true;
  for (const TabRow& row : tabs) {
    if (row.tab == Tab::Reception && !app.desk->brief().reception) {
      continue; // The case does not ask how the specimen came.
    }
    if (!first) {
      flow(width_of(row.label));
    }
    first = false;
    const bool open = app.tab == row.tab;
    ImGui::PushStyleColor(ImGuiCol_Button,
                          ImGui::GetStyleColorVec4(open ? ImGuiCol_TabActive : ImGuiCol_Tab));
    if (app.widgets.button(row.name, row.label) && !open) {
      app.tab = row.tab;
      app.focus_panel = true;
    }
    ImGui::PopStyleColor();
  }
  ImGui::Separator();
}

void draw_panel(App& app, const render::Rect& area) {
  const Pane pane("panel", area);
  draw_tab_row(app);
  draw_guide_box(app);
  for (const TabRow& row : tabs) {
    if (row.tab != app.tab) {
      continue;
    }
    app.widgets.tell("tab", row.label);
    ImGui::BeginChild(row.label, {0, 0}, false, ImGuiWindowFlags_NavFlattened);
    if (app.focus_panel) {
      app.focus_panel = false;
      app.widgets.focus_next();
    }
    row.draw(app);
    ImGui::EndChild();
    break; // What was drawn may have opened another tab.
  }
}

// Liquids change slowly beside flame, bubbles and a bobbing float, which are drawn at every frame.
constexpr double look_again_s = 0.1;

/// The bench as it is to be seen now; made anew only when something has happened.
void refresh_scene(App& app) {
  const bool moved = app.scene && app.seen_at_s != app.desk->time_s();
  const bool goes_on = app.clock.waiting() || app.something_heats();
  const bool soon =
      app.wall_s - app.seen_at_wall_s < look_again_s && goes_on && app.scene && !app.scene->floating;
  if (app.changed || !app.scene || (moved && !soon)) {
    app.scene = app.desk->scene(app.hands.view);
    app.seen_at_wall_s = app.wall_s;
    app.seen_at_s = app.desk->time_s();
    app.changed = false;
  }
}

void tell_state(App& app) {
  app.widgets.tell("screen", at_author(app)            ? author_screen(app)
                             : at_class(app)           ? class_screen(app)
                             : at_practice(app)        ? practice_screen(app)
                             : !app.desk               ? "start"
                             : !app.desk->finished()   ? "bench"
                             : app.desk->examination() ? "closed"
                                                       : "marks");
  app.widgets.tell("message", app.message);
  app.widgets.tell("typing", ImGui::GetIO().WantTextInput ? "1" : "0");
  if (app.desk) {
    app.widgets.tell("time_s", fmt::format("{:.3f}", app.desk->time_s()));
    app.widgets.tell("waiting", app.clock.waiting() ? "1" : "0");
    app.widgets.tell("gloves", app.desk->wears_gloves() ? "1" : "0");
    const auto& shelf = app.desk->brief().reagents_out;
    app.widgets.tell("bottle", shelf.empty() ? "" : shelf[static_cast<std::size_t>(app.hands.bottle)]);
    app.widgets.tell("vessel", app.hands.vessel);
    app.widgets.tell("log", app.desk->log_file().string());
  }
}

} // namespace

void draw_frame(App& app, float width, float height) {
  app.widgets.begin_frame();
  tell_state(app);
  const render::Rect all{0, 0, width, height};
  if (at_author(app)) {
    draw_author(app, width, height);
    return;
  }
  if (at_class(app)) {
    draw_class(app, width, height);
    return;
  }
  if (at_practice(app)) {
    draw_practice(app, width, height);
    return;
  }
  if (!app.desk) {
    draw_start_screen(app, all);
    return;
  }
  if (app.desk->finished()) {
    if (app.desk->examination()) {
      draw_closed_screen(app, all);
    } else {
      draw_marks_screen(app, all);
    }
    return;
  }
  handle_keys(app);
  if (!app.desk) {
    return; // A key closed the case.
  }
  refresh_scene(app);
  const Regions where = regions(width, height, app.aids.text_scale);
  draw_strip(app, where.strip);
  if (!app.desk || app.desk->finished()) {
    return;
  }
  if (app.tab == Tab::Reception) {
    draw_counter(app, where.bench);
  } else {
    draw_bench(app, where.bench);
  }
  draw_panel(app, where.panel);
  draw_message(app, where.message);
}

} // namespace matula::window
