#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <cmath>

namespace matula::window {

namespace {

void choose_card(App& app, const char* name, const char* label, appearance::Card card) {
  if (app.widgets.choice(name, label, app.hands.view.card == card)) {
    app.hands.view.card = card;
    app.look();
  }
}

void choose_lamp(App& app, const char* name, const char* label, optics::Lamp lamp) {
  if (app.widgets.choice(name, label, app.hands.view.lamp == lamp)) {
    app.hands.view.lamp = lamp;
    app.look();
  }
}

} // namespace

void draw_look_group(App& app) {
  heading("Look, smell, measure");
  choose_card(app, "card.white", "white (W)", appearance::Card::White);
  ImGui::SameLine();
  choose_card(app, "card.black", "black (B)", appearance::Card::Black);
  ImGui::SameLine();
  choose_card(app, "card.printed", "printed card (P)", appearance::Card::Printed);
  choose_lamp(app, "lamp.day", "daylight", optics::Lamp::Daylight);
  ImGui::SameLine();
  choose_lamp(app, "lamp.indoor", "lamp light", optics::Lamp::Indoor);
  draw_beside_choice(app);
  if (app.widgets.button("smell", "Smell")) {
    app.act(bench::Smell{app.hands.vessel});
  }
  ImGui::SameLine();
  if (app.widgets.button("thermometer", "Thermometer")) {
    app.act(bench::Thermometer{app.hands.vessel});
  }
}

void draw_float_group(App& app) {
  heading("Urinometer");
  const bool floats = app.scene->floating.has_value();
  app.widgets.tick("float.wipe", "wiped clean", app.hands.wipe);
  ImGui::SameLine();
  app.widgets.tick("float.spin", "spun as it goes in", app.hands.spin);
  if (app.widgets.button("float.in", "Lower it into this vessel", !floats)) {
    app.act(bench::Float{app.hands.vessel, app.hands.wipe, app.hands.spin},
            "The float is in. It bobs for some seconds; read it when it stands still.");
    app.clock.wait_until(app.desk->time_s(), app.desk->time_s() + 5);
  }
  ImGui::SameLine();
  if (app.widgets.button("float.out", "Lift it out", floats)) {
    app.act(bench::LiftFloat{}, "The float is out.");
  }
  if (app.widgets.button("float.again", "Spin it", floats)) {
    app.act(bench::SpinFloat{});
    app.clock.wait_until(app.desk->time_s(), app.desk->time_s() + 5);
  }
  ImGui::SameLine();
  if (app.widgets.button("float.bubbles", "Wipe off bubbles", floats)) {
    app.act(bench::ClearBubbles{});
    app.clock.wait_until(app.desk->time_s(), app.desk->time_s() + 5);
  }
  if (floats) {
    constexpr double still_mm_s = 0.05; // slower than any eye follows
    const bool still = std::abs(app.scene->floating->state.speed_mm_s) < still_mm_s;
    ImGui::TextDisabled("%s", still ? "It is at rest." : "It is still bobbing.");
    ImGui::SetNextItemWidth(ImGui::GetFontSize() * 9);
    if (app.widgets.slider("eye", "eye above the surface", app.hands.eye_mm, -40, 40)) {
      app.look();
    }
    app.changed = true;
  }
}

} // namespace matula::window
