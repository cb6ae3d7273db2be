#include "engine/window/aids.hpp"

#include "engine/window/flow.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>
#include <imgui.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>

namespace matula::window {

namespace {

std::filesystem::path file_in(const std::filesystem::path& folder) {
  return folder / "aids.json";
}

void note_scale(App& app) {
  app.use_aid("aid.text", fmt::format("{:.0f} %", static_cast<double>(app.aids.text_scale) * 100));
}

void draw_tick(App& app, const char* name, const char* item, const char* label, bool& value) {
  if (app.widgets.tick(name, label, value)) {
    app.use_aid(item, value ? "yes" : "no");
  }
}

} // namespace

Aids load_aids(const std::filesystem::path& folder, const Aids& otherwise) {
  std::ifstream in(file_in(folder));
  const auto kept = nlohmann::json::parse(in, nullptr, false);
  Aids aids = otherwise;
  if (!kept.is_object()) {
    return aids;
  }
  if (kept.contains("text") && kept["text"].is_number()) {
    aids.text_scale = std::clamp(kept["text"].get<float>(), 1.0F, 2.0F);
  }
  aids.still = kept.value("still", nlohmann::json()) == true;
  aids.hues = kept.value("hues", nlohmann::json()) == true;
  return aids;
}

void keep_aids(const std::filesystem::path& folder, const Aids& aids) {
  std::error_code ignored;
  std::filesystem::create_directories(folder, ignored);
  std::ofstream(file_in(folder)) << nlohmann::json{
      {"text", aids.text_scale}, {"still", aids.still}, {"hues", aids.hues}};
}

void draw_text_size(App& app) {
  float& scale = app.aids.text_scale;
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Text");
  ImGui::SameLine();
  if (app.widgets.button("text.smaller", "-", scale > 1.0F)) {
    scale -= 0.25F;
    note_scale(app);
  }
  ImGui::SameLine();
  ImGui::Text("%.0f %%", static_cast<double>(scale) * 100);
  ImGui::SameLine();
  if (app.widgets.button("text.larger", "+", scale < 2.0F)) {
    scale += 0.25F;
    note_scale(app);
  }
}

void draw_aids(App& app) {
  draw_tick(app, "aid.still", "aid.still", "Nothing moves by itself", app.aids.still);
  const char* hues = "Name the colour under the pointer";
  flow(width_of(hues) + ImGui::GetFrameHeight());
  draw_tick(app, "aid.hues", "aid.hues", hues, app.aids.hues);
}

void draw_hue_tip(const App& app) {
  if (app.aids.hues && !app.pointer_hue.empty()) {
    ImGui::SetTooltip("%s", app.pointer_hue.c_str());
  }
}

} // namespace matula::window
