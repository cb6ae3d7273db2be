#pragma once

#include "sim/bench/action.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace matula::sitting {

/// The words a log uses for the values of each kind of choice.
template <class Choice> struct Words;

template <> struct Words<bench::Place> {
  static constexpr std::array<std::pair<bench::Place, std::string_view>, 4> list{
      {{bench::Place::Rack, "rack"},
       {bench::Place::Hand, "hand"},
       {bench::Place::Flame, "flame"},
       {bench::Place::Bath, "bath"}}};
};
template <> struct Words<bench::Manner> {
  static constexpr std::array<std::pair<bench::Manner, std::string_view>, 2> list{
      {{bench::Manner::Swirl, "swirl"}, {bench::Manner::Invert, "invert"}}};
};
template <> struct Words<appearance::Card> {
  static constexpr std::array<std::pair<appearance::Card, std::string_view>, 3> list{
      {{appearance::Card::White, "white"},
       {appearance::Card::Black, "black"},
       {appearance::Card::Printed, "printed"}}};
};
template <> struct Words<optics::Lamp> {
  static constexpr std::array<std::pair<optics::Lamp, std::string_view>, 2> list{
      {{optics::Lamp::Daylight, "daylight"}, {optics::Lamp::Indoor, "indoor"}}};
};

} // namespace matula::sitting
