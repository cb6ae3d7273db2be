#include "engine/window/palette.hpp"

#include <imgui.h>

namespace matula::window {

namespace {

struct ColourRow {
  ImGuiCol_ what;
  ImVec4 colour;
};

const ImVec4 paper_white{0.95F, 0.94F, 0.91F, 1};
const ImVec4 quiet_words{0.78F, 0.76F, 0.72F, 1};
const ImVec4 ground{0.135F, 0.130F, 0.125F, 1};
const ImVec4 raised{0.185F, 0.178F, 0.170F, 1};
const ImVec4 field{0.225F, 0.215F, 0.205F, 1};
const ImVec4 field_lit{0.295F, 0.282F, 0.268F, 1};
const ImVec4 outline{0.50F, 0.48F, 0.45F, 1};
const ImVec4 teal_dark{0.135F, 0.285F, 0.280F, 1};
const ImVec4 teal{0.165F, 0.350F, 0.345F, 1};
const ImVec4 teal_lit{0.210F, 0.440F, 0.430F, 1};
const ImVec4 amber{0.98F, 0.83F, 0.40F, 1};

const ColourRow colours[] = {{ImGuiCol_Text, paper_white},
                             {ImGuiCol_TextDisabled, quiet_words},
                             {ImGuiCol_WindowBg, ground},
                             {ImGuiCol_PopupBg, raised},
                             {ImGuiCol_Border, outline},
                             {ImGuiCol_FrameBg, field},
                             {ImGuiCol_FrameBgHovered, field_lit},
                             {ImGuiCol_FrameBgActive, field_lit},
                             {ImGuiCol_TitleBg, raised},
                             {ImGuiCol_TitleBgActive, teal_dark},
                             {ImGuiCol_ScrollbarBg, ground},
                             {ImGuiCol_ScrollbarGrab, outline},
                             {ImGuiCol_CheckMark, amber},
                             {ImGuiCol_SliderGrab, amber},
                             {ImGuiCol_SliderGrabActive, amber},
                             {ImGuiCol_Button, teal},
                             {ImGuiCol_ButtonHovered, teal_lit},
                             {ImGuiCol_ButtonActive, teal_dark},
                             {ImGuiCol_Header, teal_dark},
                             {ImGuiCol_HeaderHovered, teal},
                             {ImGuiCol_HeaderActive, teal_lit},
                             {ImGuiCol_Separator, outline},
                             {ImGuiCol_Tab, raised},
                             {ImGuiCol_TabHovered, teal_lit},
                             {ImGuiCol_TabActive, teal},
                             {ImGuiCol_TabUnfocused, raised},
                             {ImGuiCol_TabUnfocusedActive, teal},
                             {ImGuiCol_PlotHistogram, teal_lit},
                             {ImGuiCol_TableHeaderBg, raised},
                             {ImGuiCol_TableBorderStrong, outline},
                             {ImGuiCol_TableBorderLight, field_lit},
                             {ImGuiCol_TableRowBgAlt, raised},
                             {ImGuiCol_TextSelectedBg, teal},
                             {ImGuiCol_NavHighlight, amber},
                             {ImGuiCol_NavWindowingHighlight, amber}};

} // namespace

void set_colours(ImGuiStyle& style) {
  for (const ColourRow& row : colours) {
    style.Colors[row.what] = row.colour;
  }
}

} // namespace matula::window
