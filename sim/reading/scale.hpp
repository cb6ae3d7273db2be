#pragma once

#include <string>
#include <vector>

namespace matula::reading {

/// How a result is judged: the cloud after heat or acid, the colours of reduced copper, the strength of a
/// colour in one direction of hue, a test paper beside its reference card, how much of a powder strewn on the
/// surface still floats, or a whitish ring on black.
enum class ScaleKind { HeatCloud, AcidCloud, CopperColour, Colour, Paper, Powder, CloudRing };

/// Where on a vessel a colour is judged: the whole tube, the strongest band across it (a ring), the upper or
/// the lower of two liquids, or a filter paper laid out.
enum class Where { Tube, Ring, Upper, Lower, Paper };

/// A colour graded by its strength: CIELAB chroma in one direction of hue over lightness, so that a deeper
/// colour of the same hue is always stronger. Lines part one grade from the next.
struct ColourScale {
  Where where = Where::Tube;
  double hue_deg = 0;            ///< CIELAB hue angle of the product's colour, 0..360.
  std::vector<double> lines;     ///< Strengths at which each next grade begins, rising; at most five.
  std::vector<std::string> seen; ///< What is seen at each grade; one more than the lines.
};

/// A pad of a test paper, read beside its row of the reference card, or without one by a colour scale.
struct PaperScale {
  std::string paper; ///< Kind of paper.
  std::string pad;
  /// The value each word stands for, rising; empty when the words are those of the card, one a field.
  std::vector<double> values;
  std::string drop; ///< Reagent that is let fall on it before it is read; empty for none.
};

/// A powder that floats or sinks.
struct PowderScale {
  std::vector<double> lines;     ///< Share that has sunk at which each next grade begins, rising.
  std::vector<std::string> seen; ///< What is seen at each grade; one more than the lines.
};

struct Scale {
  ScaleKind kind = ScaleKind::HeatCloud;
  ColourScale colour; ///< Of kind Colour; of kind CloudRing its lines and what is seen.
  PaperScale paper;   ///< Of kind Paper, or of kind Colour where that is looked for on a paper.
  PowderScale powder; ///< Only of kind Powder.

  Scale() = default;
  // NOLINTNEXTLINE(google-explicit-constructor): a kind without a colour is a whole scale.
  Scale(ScaleKind of_kind) : kind(of_kind) {}

  /// Whether a piece of paper is read and no vessel.
  [[nodiscard]] bool on_paper() const {
    return kind == ScaleKind::Paper || (kind == ScaleKind::Colour && colour.where == Where::Paper);
  }
};

} // namespace matula::reading
