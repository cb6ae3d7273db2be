#include "engine/window/fonts.hpp"

#include <imgui.h>

#include <filesystem>

namespace matula::window {

namespace {

constexpr float base_px = 17.0F;
constexpr const char* text_font = "/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf";
constexpr const char* math_font = "/usr/share/fonts/truetype/noto/NotoSansMath-Regular.ttf";

// Latin with accents, Greek, punctuation, super- and subscripts; arrows and mathematical signs come from the second font.
constexpr ImWchar text_ranges[] = {0x20, 0x17F, 0x370, 0x3FF, 0x2010, 0x2044, 0x2070, 0x209F, 0};
constexpr ImWchar math_ranges[] = {0x2190, 0x21FF, 0x2200, 0x22FF, 0};

void set_style(float scale) {
  ImGuiStyle style;
  ImGui::StyleColorsDark(&style);
  style.WindowRounding = 0;
  style.WindowBorderSize = 1;
  style.FrameRounding = 3;
  style.FramePadding = {7, 4};
  style.ItemSpacing = {8, 5};
  style.Colors[ImGuiCol_WindowBg] = {0.13F, 0.14F, 0.15F, 1.0F};
  style.Colors[ImGuiCol_Button] = {0.24F, 0.33F, 0.36F, 1.0F};
  style.Colors[ImGuiCol_ButtonHovered] = {0.31F, 0.44F, 0.47F, 1.0F};
  style.Colors[ImGuiCol_ButtonActive] = {0.38F, 0.53F, 0.56F, 1.0F};
  style.Colors[ImGuiCol_CheckMark] = {0.95F, 0.85F, 0.45F, 1.0F};
  style.Colors[ImGuiCol_NavHighlight] = {0.98F, 0.85F, 0.35F, 1.0F};
  style.Colors[ImGuiCol_TextDisabled] = {0.72F, 0.74F, 0.75F, 1.0F};
  style.ScaleAllSizes(scale);
  ImGui::GetStyle() = style;
}

} // namespace

std::string set_text_scale(float scale) {
  if (!std::filesystem::exists(text_font)) {
    return std::string("the font ") + text_font + " is missing; install the package fonts-noto-core";
  }
  ImFontAtlas& fonts = *ImGui::GetIO().Fonts;
  fonts.Clear();
  fonts.AddFontFromFileTTF(text_font, base_px * scale, nullptr, text_ranges);
  if (std::filesystem::exists(math_font)) {
    ImFontConfig merge;
    merge.MergeMode = true;
    fonts.AddFontFromFileTTF(math_font, base_px * scale, &merge, math_ranges);
  }
  fonts.Build();
  set_style(scale);
  return {};
}

} // namespace matula::window
