#include "engine/scoring/paper_facts.hpp"

#include "engine/scoring/tubes.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

void add_dipping(Facts& facts, const bench::PaperState& paper) {
  facts["dip_s"] = paper.trace.dip_s;
  facts["blotted"] = paper.piece.blotted ? 1 : 0;
  facts["specimen_c_at_dip"] = paper.trace.specimen_c;
  facts["mixed_before_dip"] = paper.trace.mixed_before ? 1 : 0;
}

/// What the tube had gone through that was filtered, and what was dropped on the paper since.
void add_filtering(Facts& facts, const bench::State& state, const bench::PaperTrace& trace,
                   const TestRule& test) {
  const bench::VesselTrace& tube = trace.source;
  const double urine = urine_ml(state, tube);
  const double reagent = reagent_ml(tube, test);
  facts["urine_ml"] = urine;
  facts["reagent_ml"] = reagent;
  facts["acid_per_urine"] = urine > 0 ? reagent / urine : 0;
  if (!tube.additions.empty()) {
    const double last_s = tube.additions.back().time_s;
    facts["stood_before_filter_s"] = trace.filtered_s - last_s;
    facts["mixed_after_last_addition"] = mixed_since_last_addition(tube) ? 1 : 0;
  }
}

/// Drops of the test's own reagent.
void add_drops(Facts& facts, const bench::PaperTrace& trace, const TestRule& test, double now_s,
               bool written) {
  double count = 0;
  for (const auto& drops : trace.drops) {
    if (drops.reagent != test.scale.paper.drop) {
      continue;
    }
    count += drops.count;
    if (written) {
      facts["since_drop_s"] = now_s - drops.time_s;
    }
  }
  facts["drops_on_paper"] = count;
}

} // namespace

Facts paper_facts(const bench::State& state, const std::string& piece, const TestRule& test, bool written) {
  const auto found = std::find_if(state.papers.begin(), state.papers.end(),
                                  [&](const auto& paper) { return paper.piece.name == piece; });
  Facts facts;
  if (found == state.papers.end()) {
    return facts;
  }
  if (test.scale.kind == reading::ScaleKind::Paper) {
    add_dipping(facts, *found);
    if (written && found->piece.wetted_s >= 0) {
      facts["paper_age_s"] = state.time_s - found->piece.wetted_s;
    }
    return facts;
  }
  add_filtering(facts, state, found->trace, test);
  add_drops(facts, found->trace, test, state.time_s, written);
  return facts;
}

} // namespace matula::scoring
