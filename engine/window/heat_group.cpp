#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

namespace {

struct Part {
  const char* name;
  const char* label;
  double height;
};
constexpr Part parts[] = {
    {"heat.upper", "upper", 0.85}, {"heat.middle", "middle", 0.5}, {"heat.lower", "lower part", 0.15}};

void draw_hold(App& app) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Flame plays on the");
  for (int i = 0; i < 3; ++i) {
    ImGui::SameLine();
    if (app.widgets.choice(parts[i].name, parts[i].label, app.hands.heat_part == i)) {
      app.hands.heat_part = i;
    }
  }
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Mouth points");
  ImGui::SameLine();
  if (app.widgets.choice("heat.away", "where nobody stands", !app.hands.towards_person)) {
    app.hands.towards_person = false;
  }
  ImGui::SameLine();
  if (app.widgets.choice("heat.towards", "at somebody", app.hands.towards_person)) {
    app.hands.towards_person = true;
  }
  app.widgets.tick("heat.moving", "keep it moving", app.hands.keep_moving);
}

} // namespace

void draw_mix_group(App& app) {
  heading("Mix it");
  if (app.widgets.button("mix.swirl", "Swirl 5 s")) {
    app.act(bench::Mix{app.hands.vessel, bench::Manner::Swirl, 5}, "Swirled.");
  }
  flow(width_of("Turn over, 3 s"));
  if (app.widgets.button("mix.turn", "Turn over, 3 s")) {
    app.act(bench::Mix{app.hands.vessel, bench::Manner::Invert, 3}, "Turned over once or twice.");
  }
  flow(width_of("Invert for 10 s"));
  if (app.widgets.button("mix.invert", "Invert for 10 s")) {
    app.act(bench::Mix{app.hands.vessel, bench::Manner::Invert, 10}, "Inverted again and again.");
  }
}

void draw_heat_group(App& app) {
  heading("Heat it");
  const std::string& caution = app.ground.caution("flame");
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled("Caution: %s", caution.c_str());
  ImGui::PopTextWrapPos();
  if (app.widgets.button("burner", app.scene->flame_on ? "Put the burner out" : "Light the burner")) {
    app.act(bench::LightFlame{!app.scene->flame_on});
  }
  draw_hold(app);
  if (app.widgets.button("heat.flame", "Hold it in the flame")) {
    app.act(bench::Move{app.hands.vessel, bench::Place::Flame, parts[app.hands.heat_part].height,
                        app.hands.towards_person, app.hands.keep_moving},
            "Held in the flame; bench time runs. Take it out in time.");
  }
  ImGui::SameLine();
  if (app.widgets.button("heat.rack", "Back to the rack")) {
    app.act(bench::Move{app.hands.vessel, bench::Place::Rack},
            "Out of the heat. What boils goes on for some seconds more.");
  }
  app.widgets.number("bath.c", app.hands.bath_c, 20, 100, number_width(), "%.0f");
  ImGui::SameLine();
  ImGui::TextUnformatted("°C");
  ImGui::SameLine();
  if (app.widgets.button("bath.set", "Set the bath")) {
    app.act(bench::SetBath{app.hands.bath_c, app.hands.warming_c_per_min});
  }
  ImGui::SameLine();
  if (app.widgets.button("bath.in", "Into the bath")) {
    app.act(bench::Move{app.hands.vessel, bench::Place::Bath}, "Standing in the water bath.");
  }
  app.widgets.number("bath.rate", app.hands.warming_c_per_min, 0, 30, number_width(), "%.1f");
  ImGui::SameLine();
  ImGui::TextUnformatted("°C a minute (0: as fast as it can)");
  ImGui::Text("Bath %.0f °C, room %.0f °C", app.scene->bath_c, app.scene->room_c);
}

} // namespace matula::window
