#include "engine/window/group.hpp"
#include "engine/window/pads.hpp"
#include "engine/window/panels.hpp"
#include "engine/window/paper_card.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

const bench::SeenPaper* chosen_paper(const App& app) {
  for (const bench::SeenPaper& paper : app.scene->papers) {
    if (paper.name == app.hands.paper) {
      return &paper;
    }
  }
  return app.scene->papers.empty() ? nullptr : &app.scene->papers.back();
}

bool has_card(const bench::SeenCard& card) {
  return std::any_of(card.rows.begin(), card.rows.end(), [](const auto& row) { return !row.fields.empty(); });
}

void draw_dip(App& app) {
  heading("Dip a paper into the vessel in hand");
  bool first = true;
  for (const bench::SeenCard& card : app.scene->cards) {
    if (!has_card(card)) {
      continue; // A filter is not for dipping.
    }
    if (!first) {
      ImGui::SameLine();
    }
    first = false;
    if (app.widgets.choice(("paper.kind=" + card.kind).c_str(), card.label,
                           app.hands.paper_kind == card.kind)) {
      app.hands.paper_kind = card.kind;
    }
  }
  app.widgets.number("paper.seconds", app.hands.dip_s, 0.5, 120, number_width(), "%.1f");
  ImGui::SameLine();
  ImGui::TextUnformatted("s");
  ImGui::SameLine();
  if (app.widgets.button("paper.dip", "Dip into " + say_vessel(app.hands.vessel))) {
    app.hands.paper.clear(); // The new one comes to hand.
    app.act(bench::DipPaper{app.hands.paper_kind, app.hands.vessel, app.hands.dip_s},
            "Dipped. Blot its edge, and let time run to the moment of reading.");
  }
}

void draw_handling(App& app, const bench::SeenPaper& paper) {
  std::vector<std::string> names;
  int chosen = 0;
  for (const bench::SeenPaper& each : app.scene->papers) {
    chosen = each.name == paper.name ? static_cast<int>(names.size()) : chosen;
    names.push_back(each.label + " " + each.name.substr(each.name.rfind('-') + 1));
  }
  ImGui::SetNextItemWidth(ImGui::GetFontSize() * 9);
  if (app.widgets.pick("paper.which", "##which", names, chosen)) {
    app.hands.paper = app.scene->papers[static_cast<std::size_t>(chosen)].name;
  }
  ImGui::SameLine();
  ImGui::Text("wet for %s", say_time(paper.wet_for_s).c_str());
  app.widgets.tell("paper.wet_for_s", fmt::format("{:.1f}", paper.wet_for_s));
  if (app.widgets.button("paper.blot", paper.blotted ? "Blotted" : "Blot", !paper.blotted)) {
    app.act(bench::BlotPaper{paper.name}, "Blotted: nothing runs from pad to pad now.");
  }
  ImGui::SameLine();
  if (app.widgets.button("paper.look", "Hold beside the card")) {
    app.act(bench::LookAtPaper{paper.name}, "Held beside its card.");
  }
  ImGui::SameLine();
  if (app.widgets.button("paper.discard", "Discard")) {
    app.act(bench::DiscardPaper{paper.name}, "Into the bin for infectious waste.");
  }
}

/// Drops from the bottle in hand.
void draw_drops(App& app, const bench::SeenPaper& paper) {
  const auto& shelf = app.desk->brief().reagents_out;
  if (shelf.empty()) {
    return;
  }
  const std::string& reagent = shelf[static_cast<std::size_t>(app.hands.bottle)];
  app.widgets.number("paper.drops", app.hands.drops_on, 1, 20, number_width() * 0.8F, "%.0f");
  ImGui::SameLine();
  if (app.widgets.button("paper.drop", "drops of " + app.ground.bottle_label(reagent) + " on it")) {
    app.act(bench::DropOn{paper.name, reagent, app.hands.drops_on}, "Dropped on the paper.");
  }
}

/// Whether the pad just drawn is looked at from near: the pointer is on it, or the keyboard is.
bool is_near() {
  return ImGui::IsItemHovered() || (ImGui::IsItemFocused() && ImGui::GetIO().NavVisible);
}

/// The pad at the left, its row of the card at the right, low enough that ten rows stand in the panel.
void draw_row(App& app, const bench::SeenCardRow& row, const bench::SeenPaper& paper) {
  const float text = ImGui::GetTextLineHeight();
  const float name_w = ImGui::GetFontSize() * 6.6F;
  const float side = text * 1.45F;
  const float tall = text * 0.85F;
  const float pitch = tall + text + 3;
  const ImVec2 at = ImGui::GetCursorScreenPos();
  const float fields_x = at.x + name_w + side + text;
  ImDrawList* ink = ImGui::GetWindowDrawList();
  ink->AddText({at.x, at.y - text * 0.1F}, ImGui::GetColorU32(ImGuiCol_Text), row.label.c_str());
  ink->AddText({at.x, at.y + text * 0.8F}, ImGui::GetColorU32(ImGuiCol_TextDisabled),
               fmt::format("at {:g} s", row.read_at_s).c_str());
  draw_fields(row, {fields_x, at.y}, at.x + ImGui::GetContentRegionAvail().x - fields_x, tall);
  for (const bench::SeenPad& pad : paper.pads) {
    if (pad.key != row.key) {
      continue;
    }
    const ImVec2 corner{at.x + name_w, at.y + (pitch - side) / 2 - 1};
    draw_pad(pad, corner, side);
    ImGui::SetCursorScreenPos(corner);
    ImGui::InvisibleButton(("near " + pad.key).c_str(), {side, side});
    app.widgets.note(("paper.pad." + pad.key).c_str());
    if (is_near()) {
      ink->AddRect({corner.x - 2, corner.y - 2}, {corner.x + side + 2, corner.y + side + 2},
                   ImGui::GetColorU32(ImGuiCol_NavHighlight), 0, 0, 2);
      ImGui::BeginTooltip();
      draw_near(pad, row);
      ImGui::EndTooltip();
    }
  }
  ImGui::SetCursorScreenPos(at);
  ImGui::Dummy({ImGui::GetContentRegionAvail().x, pitch - ImGui::GetStyle().ItemSpacing.y + 2});
}

/// A paper without a card, a filter laid out, is looked at by itself.
void draw_bare(const bench::SeenPaper& paper) {
  heading("Spread out on white");
  for (const bench::SeenPad& pad : paper.pads) {
    draw_near(pad, {});
  }
}

} // namespace

void draw_paper_card(App& app, const bench::Scene& scene, const bench::SeenPaper& paper) {
  for (const bench::SeenCard& card : scene.cards) {
    if (card.kind != paper.kind) {
      continue;
    }
    if (!has_card(card)) {
      draw_bare(paper);
      continue;
    }
    heading("Beside its card (point at a pad to look from near)");
    for (const bench::SeenCardRow& row : card.rows) {
      draw_row(app, row, paper);
    }
  }
}

void draw_papers_tab(App& app) {
  if (app.scene->cards.empty()) {
    ImGui::TextUnformatted("No papers are out for this case.");
    return;
  }
  draw_dip(app);
  const bench::SeenPaper* paper = chosen_paper(app);
  if (paper == nullptr) {
    ImGui::TextDisabled("No paper has been used yet.");
    return;
  }
  ImGui::Spacing();
  ImGui::Separator();
  const bench::SeenPaper held = *paper; // Acting renews the scene.
  draw_handling(app, held);
  draw_paper_card(app, *app.scene, held);
  draw_drops(app, held); // Below, so that the card's ten rows stand in the panel.
}

} // namespace matula::window
