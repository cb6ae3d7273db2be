#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

std::string pick_vessel(App& app, const char* name, const char* label, const std::string& lead,
                        const bench::VesselName& now, bool tubes_only) {
  std::vector<bench::VesselName> names;
  std::vector<std::string> words;
  for (const auto& vessel : app.vessel_names()) {
    if (!tubes_only || vessel.rfind("tube-", 0) == 0) {
      names.push_back(vessel);
      words.push_back(lead + say_vessel(vessel));
    }
  }
  const auto here = std::find(names.begin(), names.end(), now);
  int chosen = here == names.end() ? 0 : static_cast<int>(here - names.begin());
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 12);
  app.widgets.pick(name, label, words, chosen);
  return names.empty() ? now : names[static_cast<std::size_t>(chosen)];
}

void draw_centrifuge(App& app) {
  app.widgets.number("spin.rcf", app.hands.rcf, 1, 3000, number_width(), "%.0f");
  ImGui::SameLine();
  ImGui::TextUnformatted("g for");
  ImGui::SameLine();
  app.widgets.number("spin.minutes", app.hands.spin_minutes, 0.5, 60, number_width(), "%.1f");
  ImGui::SameLine();
  ImGui::TextUnformatted("min");
  app.hands.counterweight =
      pick_vessel(app, "spin.opposite", "##opposite", "opposite: ", app.hands.counterweight, true);
  flow(width_of("Spin both"));
  if (app.widgets.button("spin", "Spin both")) {
    constexpr double seconds_per_min = 60;
    app.act(bench::Centrifuge{{app.hands.vessel, app.hands.counterweight},
                              app.hands.rcf,
                              app.hands.spin_minutes * seconds_per_min},
            "Spun, and stopped without the brake. Pour the top off gently, or shake the button up again.");
  }
}

void draw_filter(App& app) {
  app.hands.filter_from =
      pick_vessel(app, "filter.from", "##filter", "filter from: ", app.hands.filter_from, false);
  app.widgets.number("filter.ml", app.hands.filter_ml, 0.5, 50, number_width(), "%.1f");
  ImGui::SameLine();
  ImGui::TextUnformatted("mL");
  flow(width_of("Through fresh paper into the vessel in hand"));
  if (app.widgets.button("filter", "Through fresh paper into the vessel in hand")) {
    app.act(
        bench::Filter{app.hands.filter_from, app.hands.vessel, app.hands.filter_ml},
        fmt::format("Filtered into {}. What the paper held back lies on it.", say_vessel(app.hands.vessel)));
  }
  if (app.widgets.button("filter.lay", "Lay the paper out")) {
    app.act(bench::LayPaper{}, "Laid out and pressed: it lies among the papers (L), ready for drops.");
  }
}

} // namespace

void draw_separate_group(App& app) {
  heading("Spin or filter");
  draw_centrifuge(app);
  draw_filter(app);
}

void draw_esbach_group(App& app) {
  const auto names = app.vessel_names();
  if (std::find(names.begin(), names.end(), "esbach") == names.end()) {
    return;
  }
  heading("Esbach's tube");
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled(
      "Urine to U (10 mL), reagent to R (10 mL more). Take the tube in the hand to read its scale, "
      "in grams a litre.");
  ImGui::PopTextWrapPos();
  constexpr double overnight_s = 20 * 3600.0;
  if (app.widgets.button("wait.overnight", "Let the bench stand overnight, 20 h")) {
    app.clock.wait_until(app.desk->time_s(), app.desk->time_s() + overnight_s);
  }
}

void draw_sulphur_group(App& app) {
  heading("Hay's test");
  if (app.widgets.button("sulphur", "Strew sulphur on it")) {
    app.act(bench::SprinkleSulphur{app.hands.vessel},
            "A pinch of sulphur lies on the surface. Do not shake; watch.");
  }
  flow(width_of("Tap the glass"));
  if (app.widgets.button("tap", "Tap the glass")) {
    app.act(bench::Tap{app.hands.vessel}, "Tapped.");
  }
}

} // namespace matula::window
