#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

/// The danger is named before the bottle is opened, not after.
void warn_before_opening(App& app, const std::string& reagent) {
  const bool fumes = app.ground.needs_hood(reagent) && !app.scene->hood;
  const bool fire = app.ground.catches_fire(reagent) && app.scene->flame_on;
  for (const auto& [danger, key] : {std::pair{fumes, "hood"}, {fire, "flammable"}}) {
    if (danger) {
      ImGui::PushTextWrapPos(0);
      ImGui::TextColored({1.0F, 0.9F, 0.5F, 1.0F}, "Before you open it: %s", app.ground.caution(key).c_str());
      ImGui::PopTextWrapPos();
    }
  }
}

} // namespace

void draw_pour_group(App& app) {
  heading("Pour into it");
  const auto names = app.vessel_names();
  std::vector<std::string> words;
  words.reserve(names.size());
  for (const auto& name : names) {
    words.push_back("from: " + say_vessel(name));
  }
  const auto here = std::find(names.begin(), names.end(), app.hands.pour_from);
  int chosen = here == names.end() ? 0 : static_cast<int>(here - names.begin());
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 12);
  if (app.widgets.pick("pour.from", "##from", words, chosen)) {
    app.hands.pour_from = names[static_cast<std::size_t>(chosen)];
  }
  app.widgets.number("pour.ml", app.hands.pour_ml, 0.05, 200, number_width(), "%.2f");
  ImGui::SameLine();
  ImGui::TextUnformatted("mL");
  ImGui::SameLine();
  app.widgets.tick("pour.gently", "gently, down the wall", app.hands.gently);
  if (app.widgets.button("pour", "Pour")) {
    app.act(bench::Pour{app.hands.pour_from, app.hands.vessel, app.hands.pour_ml, app.hands.gently},
            fmt::format("Poured {:g} mL of {} into {}.", app.hands.pour_ml, say_vessel(app.hands.pour_from),
                        say_vessel(app.hands.vessel)));
  }
}

void draw_bottle_group(App& app) {
  heading("Add from a bottle");
  const auto& shelf = app.desk->brief().reagents_out;
  if (shelf.empty()) {
    ImGui::TextUnformatted("No bottle is out for this case.");
    return;
  }
  std::vector<std::string> words;
  words.reserve(shelf.size());
  for (const auto& reagent : shelf) {
    words.push_back(app.ground.reagent_label(reagent));
  }
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 16);
  app.widgets.pick("bottle", "##bottle", words, app.hands.bottle);
  const std::string& reagent = shelf[static_cast<std::size_t>(app.hands.bottle)];
  warn_before_opening(app, reagent);
  app.widgets.number("bottle.amount", app.hands.amount, 0.05, 100, number_width(), "%.2f");
  ImGui::SameLine();
  if (app.widgets.choice("bottle.ml", "mL", !app.hands.in_drops)) {
    app.hands.in_drops = false;
  }
  ImGui::SameLine();
  if (app.widgets.choice("bottle.drops", "drops", app.hands.in_drops)) {
    app.hands.in_drops = true;
  }
  ImGui::SameLine();
  if (app.widgets.button("add", "Add")) {
    const double ml = app.hands.in_drops ? app.hands.amount * app.ground.drop_ml(reagent) : app.hands.amount;
    app.act(bench::Dispense{reagent, app.hands.vessel, ml, app.hands.gently},
            fmt::format("Added {:g} {} of {} to {}.", app.hands.amount,
                        !app.hands.in_drops     ? "mL"
                        : app.hands.amount == 1 ? "drop"
                                                : "drops",
                        app.ground.reagent_label(reagent), say_vessel(app.hands.vessel)));
  }
  const std::string caution = app.ground.reagent_caution(reagent);
  if (!caution.empty()) {
    ImGui::PushTextWrapPos(0);
    ImGui::TextDisabled("Caution: %s", caution.c_str());
    ImGui::PopTextWrapPos();
  }
}

} // namespace matula::window
