#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

void draw_measure_group(App& app) {
  heading("Refractometer and photometer");
  app.widgets.tick("refract.wipe", "prism wiped and dried first", app.hands.wipe_prism);
  if (app.widgets.button("refract", "A drop on the prism")) {
    app.act(bench::Refract{app.hands.vessel, app.hands.wipe_prism});
  }
  app.widgets.number("photometer.nm", app.hands.wavelength_nm, 400, 700, number_width(), "%.0f");
  ImGui::SameLine();
  ImGui::TextUnformatted("nm");
  flow(width_of("Set zero on this tube"));
  if (app.widgets.button("photometer.zero", "Set zero on this tube")) {
    app.act(bench::Measure{app.hands.vessel, app.hands.wavelength_nm, true});
  }
  flow(width_of("Measure it"));
  if (app.widgets.button("photometer.read", "Measure it")) {
    app.act(bench::Measure{app.hands.vessel, app.hands.wavelength_nm, false});
  }
}

} // namespace matula::window
