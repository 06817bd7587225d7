package org.geneticsrules.json;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Clock;

/** The shape of what a case makes of a trait: exactly one of a state, chances, a progression and a threshold. */
final class CaseShape {

    /** The keys of which a case has exactly one. */
    static final List<String> KEYS = List.of("state", "chance", "progression", "threshold");

    private static final Pattern AMOUNT = Pattern.compile("0|-?[1-9][0-9]{0,8}");

    private CaseShape() {}

    static Optional<CaseState> read(Part.Members members) {
        List<Part> stated =
                KEYS.stream().flatMap(key -> members.optional(key).stream()).toList();
        if (stated.size() > 1) {
            members.owner()
                    .problems()
                    .add(
                            "unclear-state",
                            members.owner().pointer(),
                            "the case gives " + stated.size() + " of " + String.join(", ", KEYS),
                            "exactly one of them");
        }
        if (stated.isEmpty()) {
            members.required("state");
        }
        Optional<CaseState> state =
                members.optional("state").flatMap(Part::text).map(CaseState.Certain::new);
        Optional<CaseState> chance =
                members.optional("chance").flatMap(ChanceShape::distribution).map(CaseState.Chance::new);
        Optional<CaseState> progression = members.optional("progression").flatMap(CaseShape::progression);
        Optional<CaseState> threshold = members.optional("threshold").flatMap(CaseShape::threshold);
        return state.or(() -> chance).or(() -> progression).or(() -> threshold);
    }

    private static Optional<CaseState> progression(Part part) {
        Part.Members members = part.members("clock", "start", "step", "monotone");
        Optional<Clock> clock = members.required("clock").flatMap(word -> word.word("clock", Clock::of, Clock.words()));
        Optional<Distribution<String>> start = members.required("start").flatMap(ChanceShape::distribution);
        Map<String, Distribution<String>> step = members.required("step")
                .map(rows -> ChanceShape.mapped(rows, ChanceShape::distribution))
                .orElse(Map.of());
        boolean monotone = members.optional("monotone").flatMap(Part::flag).orElse(false);
        return clock.flatMap(counts -> start.map(from -> new CaseState.Progression(counts, from, step, monotone)));
    }

    private static Optional<CaseState> threshold(Part part) {
        Part.Members members = part.members("doses", "residual", "below", "cuts");
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        members.required("doses")
                .ifPresent(loci -> loci.entries()
                        .forEach((locus, dose) -> doses.put(locus, ChanceShape.mapped(dose, Part::whole))));
        Optional<Part> stated = members.optional("residual");
        Optional<Distribution<Integer>> residual = stated.isEmpty()
                ? Optional.of(Distribution.certain(0))
                : stated.flatMap(amounts -> ChanceShape.distribution(amounts, CaseShape::amount));
        Optional<String> below = members.required("below").flatMap(Part::text);
        Map<String, Integer> cuts = members.required("cuts")
                .map(states -> ChanceShape.mapped(states, Part::whole))
                .orElse(Map.of());
        return residual.flatMap(rest -> below.map(state -> new CaseState.Threshold(doses, rest, state, cuts)));
    }

    private static Optional<Integer> amount(String name, Part chance) {
        if (!AMOUNT.matcher(name).matches()) {
            chance.problems()
                    .add(
                            "bad-amount",
                            chance.pointer(),
                            "\"" + name + "\" is no residual amount",
                            "a whole number such as \"0\" or \"-2\"");
            return Optional.empty();
        }
        return Optional.of(Integer.valueOf(name));
    }
}
