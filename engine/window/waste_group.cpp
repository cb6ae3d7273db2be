#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

namespace matula::window {

namespace {

/// In the order of bench::Bin, from its second on: nobody is offered one vessel for all.
const std::vector<std::string> bins{"into the sink, with water", "acid waste",          "heavy metals",
                                    "organic solvents",          "nitroprusside waste", "infectious waste"};

void draw_spill(App& app) {
  if (app.scene->spilled_ml <= 0) {
    return;
  }
  ImGui::TextColored({1.0F, 0.9F, 0.5F, 1.0F}, "%.1f mL lie on the bench.", app.scene->spilled_ml);
  flow(width_of("Wipe with towel and soap"));
  if (app.widgets.button("spill.wipe", "Wipe with towel and soap")) {
    app.act(bench::WipeSpill{false}, "Covered, wiped, bagged.");
  }
  flow(width_of("Disinfect with bleach"));
  if (app.widgets.button("spill.bleach", "Disinfect with bleach")) {
    app.act(bench::WipeSpill{true}, "Covered with bleach, left ten minutes, wiped, bagged.");
  }
}

} // namespace

void draw_waste_group(App& app) {
  heading("Hood and waste");
  bool hood = app.scene->hood;
  if (app.widgets.tick("hood", "Work under the fume hood", hood)) {
    app.act(bench::Hood{hood}, hood ? "The fume hood is on; you work under it." : "Back in the open room.");
  }
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 14);
  app.widgets.pick("bin", "##bin", bins, app.hands.bin);
  flow(width_of("Empty it there"));
  if (app.widgets.button("discard", "Empty it there")) {
    app.act(bench::Discard{app.hands.vessel, static_cast<bench::Bin>(app.hands.bin + 1)},
            "Emptied (" + bins[static_cast<std::size_t>(app.hands.bin)] + ") and rinsed.");
  }
  draw_spill(app);
}

} // namespace matula::window
