#include "engine/window/panels.hpp"

#include <imgui.h>

#include <algorithm>

namespace matula::window {

namespace {

std::string say_place(const App& app) {
  for (const auto& vessel : app.scene->vessels) {
    if (vessel.name == app.hands.vessel) {
      switch (vessel.place) {
      case bench::Place::Rack:
        return "standing";
      case bench::Place::Hand:
        return "in the hand";
      case bench::Place::Flame:
        return app.scene->flame_on ? "in the flame" : "over the burner, which is out";
      case bench::Place::Bath:
        return "in the water bath";
      }
    }
  }
  return "";
}

} // namespace

void draw_vessel_group(App& app) {
  const auto names = app.vessel_names();
  std::vector<std::string> words;
  words.reserve(names.size());
  for (const auto& name : names) {
    words.push_back(say_vessel(name));
  }
  int chosen = static_cast<int>(std::find(names.begin(), names.end(), app.hands.vessel) - names.begin());
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 11);
  if (app.widgets.pick("vessel", "in the hand (N next, M back)", words, chosen)) {
    app.select(names[static_cast<std::size_t>(chosen)]);
  }
  ImGui::TextDisabled("It is %s.", say_place(app).c_str());
}

void draw_safety_group(App& app) {
  bool gloves = app.desk->wears_gloves();
  bool goggles = app.desk->wears_goggles();
  bool changed = app.widgets.tick("gloves", "Gloves on", gloves);
  ImGui::SameLine();
  changed |= app.widgets.tick("goggles", "Goggles on", goggles);
  if (changed) {
    app.act(bench::Protect{gloves, goggles}, std::string(gloves ? "Gloves on, " : "Gloves off, ") +
                                                 (goggles ? "goggles on." : "goggles off."));
  }
}

} // namespace matula::window
