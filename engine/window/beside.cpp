#include "engine/window/group.hpp"
#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace matula::window {

namespace {

constexpr int texture_slot = 1; // 0 is the marks screen's.

const appearance::Appearance* looks_of(const App& app, const bench::VesselName& name) {
  const auto& all = app.scene->vessels;
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const bench::SeenVessel& one) { return one.name == name; });
  return found == all.end() ? nullptr : &found->looks;
}

} // namespace

void draw_picture(App& app, int slot, const std::vector<appearance::Appearance>& vessels) {
  const ImVec2 room = ImGui::GetContentRegionAvail();
  const int width = static_cast<int>(room.x);
  const int height = static_cast<int>(room.y);
  if (width <= 0 || height <= 0 || vessels.empty()) {
    return;
  }
  const unsigned texture = app.view.side_by_side(slot, vessels, width, height);
  // Dear ImGui takes a texture's name in the guise of a pointer. NOLINTNEXTLINE(performance-no-int-to-ptr)
  ImGui::Image(reinterpret_cast<ImTextureID>(static_cast<std::uintptr_t>(texture)), room, {0, 1}, {1, 0});
  if (ImGui::IsItemHovered()) {
    draw_hue_tip(app);
  }
}

void draw_beside_choice(App& app) {
  std::vector<std::string> names{"nothing"};
  std::vector<bench::VesselName> vessels{""};
  for (const bench::VesselName& name : app.vessel_names()) {
    if (name != app.hands.vessel) {
      names.push_back(say_vessel(name));
      vessels.push_back(name);
    }
  }
  const auto at = std::find(vessels.begin(), vessels.end(), app.hands.beside);
  int chosen = at == vessels.end() ? 0 : static_cast<int>(at - vessels.begin());
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Hold beside it");
  ImGui::SameLine();
  ImGui::SetNextItemWidth(-1);
  if (app.widgets.pick("beside", "##beside", names, chosen)) {
    app.hands.beside = vessels[static_cast<std::size_t>(chosen)];
  }
}

void draw_beside(App& app, const render::Rect& bench, const render::Rect& hand) {
  const auto* mine = looks_of(app, app.hands.vessel);
  const auto* other = looks_of(app, app.hands.beside);
  if (mine == nullptr || other == nullptr || app.hands.beside == app.hands.vessel || hand.empty()) {
    return;
  }
  const float wide = std::floor(std::min(hand.w * 1.7F, bench.w * 0.6F));
  const Pane pane("beside", {hand.x + hand.w - wide, hand.y, wide, hand.h});
  if (app.widgets.button("beside.away", "Put it back")) {
    app.hands.beside.clear();
  }
  if (ImGui::BeginTable("two", 2, ImGuiTableFlags_SizingStretchSame)) {
    for (const bench::VesselName& name : {app.hands.vessel, app.hands.beside}) {
      ImGui::TableNextColumn();
      ImGui::TextUnformatted(say_vessel(name).c_str());
    }
    ImGui::EndTable();
  }
  draw_picture(app, texture_slot, {*mine, *other});
}

} // namespace matula::window
