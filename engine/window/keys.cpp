#include "engine/window/panels.hpp"

#include <imgui.h>

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>

#include <algorithm>

namespace matula::window {

namespace {

bool pressed(int key) {
  return ImGui::IsKeyPressed(key, false);
}

void step_vessel(App& app, int by) {
  const auto names = app.vessel_names();
  const auto here = std::find(names.begin(), names.end(), app.hands.vessel);
  if (names.empty() || here == names.end()) {
    return;
  }
  const auto count = static_cast<int>(names.size());
  const int next = (static_cast<int>(here - names.begin()) + by + count) % count;
  app.select(names[static_cast<std::size_t>(next)]);
}

void show(App& app, Tab tab) {
  app.tab = tab;
  app.focus_panel = true;
}

void set_card(App& app, appearance::Card card) {
  app.hands.view.card = card;
  app.look();
}

} // namespace

void handle_keys(App& app) {
  if (ImGui::GetIO().WantTextInput) {
    return;
  }
  if (pressed(GLFW_KEY_N)) {
    step_vessel(app, 1);
  }
  if (pressed(GLFW_KEY_M)) {
    step_vessel(app, -1);
  }
  if (pressed(GLFW_KEY_W)) {
    set_card(app, appearance::Card::White);
  }
  if (pressed(GLFW_KEY_B)) {
    set_card(app, appearance::Card::Black);
  }
  if (pressed(GLFW_KEY_P)) {
    set_card(app, appearance::Card::Printed);
  }
  if (pressed(GLFW_KEY_R)) {
    app.clock.set_running(!app.clock.running());
  }
  if (pressed(GLFW_KEY_C) && app.desk->brief().reception) {
    show(app, Tab::Reception);
  }
  if (pressed(GLFW_KEY_Q)) {
    show(app, Tab::Request);
  }
  if (pressed(GLFW_KEY_D)) {
    show(app, Tab::Do);
  }
  if (pressed(GLFW_KEY_L)) {
    show(app, Tab::Papers);
  }
  if (pressed(GLFW_KEY_S)) {
    show(app, Tab::Worksheet);
  }
  if (pressed(GLFW_KEY_H)) {
    show(app, Tab::Help);
  }
  if (pressed(GLFW_KEY_T)) {
    app.focus_strip = true;
  }
  if (pressed(GLFW_KEY_ESCAPE)) {
    app.clock.stop_waiting();
    app.marks_wanted = false;
  }
}

} // namespace matula::window
