#include "engine/window/pane.hpp"
#include "engine/window/panels.hpp"

#include <algorithm>

namespace matula::window {

namespace {

using appearance::Card;

/// What lies under the pointer, and what clicking it does.
struct Thing {
  std::string name; ///< As the bench view marks it; empty for nothing.
  std::string hint;
};

const std::string* find_in(const std::map<std::string, render::Rect>& places, float x, float y) {
  const auto found = std::find_if(places.begin(), places.end(),
                                  [&](const auto& place) { return place.second.contains(x, y); });
  return found == places.end() ? nullptr : &found->first;
}

void choose_bottle(App& app, const std::string& reagent) {
  const auto& shelf = app.desk->brief().reagents_out;
  const auto found = std::find(shelf.begin(), shelf.end(), reagent);
  if (found != shelf.end()) {
    app.hands.bottle = static_cast<int>(found - shelf.begin());
    app.tab = Tab::Do;
    app.say(app.ground.reagent_label(reagent) + " is at hand: set the amount and the vessel under Do.");
  }
}

void set_view(App& app, const appearance::View& view) {
  app.hands.view = view;
  app.look();
}

Thing under_pointer(const App& app, const render::SceneLayout& where, float x, float y) {
  if (const std::string* reagent = find_in(where.reagents, x, y)) {
    return {"shelf:" + *reagent, app.ground.reagent_label(*reagent)};
  }
  if (const std::string* vessel = find_in(where.vessels, x, y)) {
    return {*vessel, say_vessel(*vessel)};
  }
  if (where.burner.contains(x, y) || where.flame.contains(x, y)) {
    return {"burner", app.scene->flame_on ? "Burner: click to put it out" : "Burner: click to light it"};
  }
  if (where.bath.contains(x, y)) {
    return {"bath", "Water bath: click to put the vessel in the hand into it"};
  }
  if (where.lamp.contains(x, y)) {
    return {"lamp", "Lamp: click for daylight or lamp light"};
  }
  for (std::size_t card = 0; card < where.cards.size(); ++card) {
    if (where.cards[card].contains(x, y)) {
      const char* hints[] = {"White card", "Black card", "Printed card"};
      return {"card." + std::to_string(card), hints[card]};
    }
  }
  return {};
}

void click(App& app, const Thing& thing) {
  appearance::View view = app.hands.view;
  if (thing.name == "burner") {
    app.act(bench::LightFlame{!app.scene->flame_on});
  } else if (thing.name == "bath") {
    app.act(bench::Move{app.hands.vessel, bench::Place::Bath});
  } else if (thing.name == "lamp") {
    view.lamp = view.lamp == optics::Lamp::Daylight ? optics::Lamp::Indoor : optics::Lamp::Daylight;
    set_view(app, view);
  } else if (thing.name.rfind("card.", 0) == 0) {
    view.card = static_cast<Card>(thing.name.back() - '0');
    set_view(app, view);
  } else {
    const auto names = app.vessel_names();
    if (std::find(names.begin(), names.end(), thing.name) != names.end()) {
      app.select(thing.name);
    } else if (thing.name.rfind("shelf:", 0) == 0) {
      choose_bottle(app, thing.name.substr(6));
    }
  }
}

void note_places(App& app, const render::SceneLayout& where) {
  const auto note = [&app](const std::string& name, const render::Rect& place) {
    if (!place.empty()) {
      app.widgets.note_at("bench." + name, place.x + place.w / 2, place.y + place.h / 2);
    }
  };
  for (const auto& [name, place] : where.vessels) {
    note(name, place);
  }
  for (const auto& [name, place] : where.reagents) {
    note("shelf:" + name, place);
  }
  note("burner", where.burner);
  note("bath", where.bath);
  note("lamp", where.lamp);
  note("card.0", where.cards[0]);
  note("card.1", where.cards[1]);
  note("card.2", where.cards[2]);
}

std::string surname_in(std::string name) {
  name = name.substr(0, std::min(name.find(" ("), name.find(',')));
  return name.substr(name.rfind(' ') + 1);
}

/// What fits on a cup and can be read from afar. Where the specimen came over a counter, what its label says,
/// right or wrong; else the surname and the number of the sitting.
std::string cup_label(const desk::Desk& desk) {
  if (const auto& counter = desk.brief().reception) {
    std::string words;
    for (const auto& [line, written] : counter->label) {
      words += line == "Name" ? surname_in(written) : line == "Number" ? "\n" + written : "";
    }
    return words;
  }
  const std::string sitting = desk.log_file().stem().string();
  return surname_in(desk.brief().patient) + "\nNo. " + sitting.substr(sitting.rfind('-') + 1);
}

} // namespace

render::Show show_of(const App& app) {
  render::Show show;
  show.in_hand = app.hands.vessel;
  show.eye_mm = static_cast<double>(app.hands.eye_mm);
  show.seconds = app.aids.still ? 0 : app.wall_s;
  show.boil_seconds = app.aids.still ? 0 : app.boil_s;
  show.marked = app.hovered;
  for (const std::string& reagent : app.desk->brief().reagents_out) {
    show.labels[reagent] = app.ground.bottle_label(reagent);
  }
  show.labels["specimen"] = cup_label(*app.desk);
  show.labels["tag:specimen"] = "Specimen";
  show.labels["tag:jar"] = "Jar";
  show.labels["tag:water"] = "Water";
  show.labels["tag:esbach"] = "Esbach";
  return show;
}

static void draw_whole_bench(App& app, const render::Rect& area) {
  const Pane pane("bench", area,
                  ImGuiWindowFlags_NoBackground | ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoNav);
  const render::SceneLayout where = render::layout(*app.scene, show_of(app), area);
  note_places(app, where);
  ImGui::SetCursorScreenPos({area.x, area.y});
  const bool clicked = ImGui::InvisibleButton("everything", {area.w, area.h});
  app.hovered.clear();
  if (ImGui::IsItemHovered()) {
    const ImVec2 pointer = ImGui::GetMousePos();
    const Thing thing = under_pointer(app, where, pointer.x, pointer.y);
    app.hovered = thing.name;
    app.widgets.tell("hovered", "bench." + thing.name);
    const bool named = app.aids.hues && !app.pointer_hue.empty();
    if (!thing.hint.empty() || named) {
      const std::string gap = thing.hint.empty() || !named ? "" : "\n";
      ImGui::SetTooltip("%s", (thing.hint + gap + (named ? app.pointer_hue : "")).c_str());
    }
    if (clicked) {
      click(app, thing);
    }
  }
}

void draw_bench(App& app, const render::Rect& area) {
  draw_whole_bench(app, area);
  draw_beside(app, area, render::layout(*app.scene, show_of(app), area).hand);
}

} // namespace matula::window
