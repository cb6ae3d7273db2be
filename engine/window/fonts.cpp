#include "engine/window/fonts.hpp"

#include "engine/window/palette.hpp"

#include <imgui.h>

#include <filesystem>

namespace matula::window {

namespace {

constexpr float base_px = 17.0F;
constexpr float title_px = 26.0F;
constexpr const char* text_font = "/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf";
constexpr const char* math_font = "/usr/share/fonts/truetype/noto/NotoSansMath-Regular.ttf";

// Latin with accents, Greek, punctuation, super- and subscripts; arrows and mathematical signs come from the
// second font.
constexpr ImWchar text_ranges[] = {0x20, 0x17F, 0x370, 0x3FF, 0x2010, 0x2044, 0x2070, 0x209F, 0};
constexpr ImWchar title_ranges[] = {0x20, 0x7E, 0};
constexpr ImWchar math_ranges[] = {0x2190, 0x21FF, 0x2200, 0x22FF, 0};

void set_style(float scale) {
  ImGuiStyle style;
  ImGui::StyleColorsDark(&style);
  style.WindowRounding = 0;
  style.WindowBorderSize = 1;
  style.FrameRounding = 3;
  style.FramePadding = {7, 4};
  style.ItemSpacing = {8, 5};
  style.FrameBorderSize = 1;
  style.TabBorderSize = 1;
  set_colours(style);
  style.ScaleAllSizes(scale);
  ImGui::GetStyle() = style;
}

} // namespace

void push_title_font() {
  ImGui::PushFont(ImGui::GetIO().Fonts->Fonts.back());
}

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
  fonts.AddFontFromFileTTF(text_font, title_px * scale, nullptr, title_ranges);
  fonts.Build();
  set_style(scale);
  return {};
}

} // namespace matula::window
