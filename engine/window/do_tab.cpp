#include "engine/window/panels.hpp"

#include <imgui.h>

namespace matula::window {

void draw_do_tab(App& app) {
  draw_vessel_group(app);
  draw_safety_group(app);
  draw_pour_group(app);
  draw_bottle_group(app);
  draw_mix_group(app);
  draw_heat_group(app);
  draw_look_group(app);
  draw_float_group(app);
  draw_measure_group(app);
  draw_separate_group(app);
  draw_sulphur_group(app);
  draw_esbach_group(app);
  draw_waste_group(app);
}

} // namespace matula::window
