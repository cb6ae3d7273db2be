#include "engine/sitting/event_json.hpp"

#include "engine/sitting/event_fields.hpp"
#include "engine/sitting/items.hpp"
#include "engine/strict/nearest.hpp"

#include <algorithm>
#include <type_traits>

namespace matula::sitting {

namespace {

using What = decltype(Event::what);

struct Kind {
  std::string verb;
  What empty;
};

/// In the order of the alternatives of bench::Action, then what is written down.
const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{
      {"pour", bench::Action(bench::Pour{})},
      {"dispense", bench::Action(bench::Dispense{})},
      {"mix", bench::Action(bench::Mix{})},
      {"move", bench::Action(bench::Move{})},
      {"flame", bench::Action(bench::LightFlame{})},
      {"bath", bench::Action(bench::SetBath{})},
      {"float", bench::Action(bench::Float{})},
      {"lift_float", bench::Action(bench::LiftFloat{})},
      {"spin_float", bench::Action(bench::SpinFloat{})},
      {"clear_bubbles", bench::Action(bench::ClearBubbles{})},
      {"thermometer", bench::Action(bench::Thermometer{})},
      {"smell", bench::Action(bench::Smell{})},
      {"look", bench::Action(bench::Look{})},
      {"protect", bench::Action(bench::Protect{})},
      {"discard", bench::Action(bench::Discard{})},
      {"wait", bench::Action(bench::Wait{})},
      {"refractometer", bench::Action(bench::Refract{})},
      {"photometer", bench::Action(bench::Measure{})},
      {"centrifuge", bench::Action(bench::Centrifuge{})},
      {"filter", bench::Action(bench::Filter{})},
      {"sulphur", bench::Action(bench::SprinkleSulphur{})},
      {"tap", bench::Action(bench::Tap{})},
      {"hood", bench::Action(bench::Hood{})},
      {"wipe_spill", bench::Action(bench::WipeSpill{})},
      {"dip", bench::Action(bench::DipPaper{})},
      {"blot", bench::Action(bench::BlotPaper{})},
      {"look_at_paper", bench::Action(bench::LookAtPaper{})},
      {"drop_on", bench::Action(bench::DropOn{})},
      {"discard_paper", bench::Action(bench::DiscardPaper{})},
      {"lay_paper", bench::Action(bench::LayPaper{})},
      {"record", Record{}},
      {"finish", Finish{}},
  };
  return all;
}

bool same_kind(const What& one, const What& other) {
  if (one.index() != other.index()) {
    return false;
  }
  const auto* a = std::get_if<bench::Action>(&one);
  const auto* b = std::get_if<bench::Action>(&other);
  return a == nullptr || a->index() == b->index();
}

template <class F> void visit_fields(F& f, What& what) {
  std::visit(
      [&f](auto& one) {
        if constexpr (std::is_same_v<std::decay_t<decltype(one)>, bench::Action>) {
          std::visit([&f](auto& action) { fields(f, action); }, one);
        } else {
          fields(f, one);
        }
      },
      what);
}

void check_item(const What& what, std::vector<Wrong>& wrongs) {
  if (const auto* record = std::get_if<Record>(&what)) {
    if (const std::string expected = unknown_item(record->item); !record->item.empty() && !expected.empty()) {
      wrongs.push_back({"\"item\": \"" + record->item + "\"", expected});
    }
  }
}

} // namespace

const std::vector<std::string>& verbs() {
  static const std::vector<std::string> words = [] {
    std::vector<std::string> all;
    for (const Kind& kind : kinds()) {
      all.push_back(kind.verb);
    }
    return all;
  }();
  return words;
}

std::string to_line(const Event& event) {
  nlohmann::ordered_json object;
  object["t"] = event.time_s;
  for (const Kind& kind : kinds()) {
    if (same_kind(kind.empty, event.what)) {
      object["do"] = kind.verb;
    }
  }
  FieldWriter writer(object);
  What what = event.what;
  visit_fields(writer, what);
  return object.dump(-1, ' ', false, nlohmann::ordered_json::error_handler_t::replace);
}

std::optional<Event> read_event(const nlohmann::json& object, Time time, std::vector<Wrong>& wrongs) {
  const std::size_t before = wrongs.size();
  FieldReader reader(object, wrongs);
  Event event;
  reader.number("t", event.time_s, 0, most_seconds, time == Time::Needed);
  std::size_t at = 0;
  const std::string verb =
      object.contains("do") && object["do"].is_string() ? object["do"].get<std::string>() : "";
  const auto found = std::find(verbs().begin(), verbs().end(), verb);
  if (found == verbs().end()) {
    wrongs.push_back({object.contains("do") ? "\"do\": \"" + verb + "\"" : "no \"do\"",
                      strict::suggestion(verb, verbs(), verbs().size())});
    return std::nullopt;
  }
  reader.choice("do", at, verbs());
  event.what = kinds()[at].empty;
  visit_fields(reader, event.what);
  reader.finish();
  check_item(event.what, wrongs);
  return wrongs.size() == before ? std::optional<Event>(event) : std::nullopt;
}

} // namespace matula::sitting
