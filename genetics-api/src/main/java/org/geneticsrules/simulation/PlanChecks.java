package org.geneticsrules.simulation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** Compares what is planned to be written down with the model. */
final class PlanChecks {

    private final CompiledModel compiled;
    private final Model model;
    private final Problems problems;

    PlanChecks(CompiledModel compiled, Problems problems) {
        this.compiled = compiled;
        this.model = compiled.model();
        this.problems = problems;
    }

    void check(List<PlannedLook> looks, List<PlannedTest> tests, Ascertainment ascertainment) {
        for (int i = 0; i < looks.size(); i++) {
            look(looks.get(i), Pointer.of("looks", Integer.toString(i)));
        }
        for (int i = 0; i < tests.size(); i++) {
            if (!model.loci().containsKey(tests.get(i).locus())) {
                problems.unknown(
                        "unknown-locus",
                        Pointer.of("tests", Integer.toString(i), "locus"),
                        "locus",
                        tests.get(i).locus(),
                        model.loci().keySet());
            }
        }
        ascertainment.noticedBy().ifPresent(sign -> sign(sign, looks));
    }

    private void look(PlannedLook look, String pointer) {
        boolean known = true;
        for (String trait : look.traits()) {
            if (!trait.equals(Sex.VARIABLE) && !model.visibleTraits().contains(trait)) {
                problems.unknown("unknown-trait", pointer + "/traits", "trait", trait, model.visibleTraits());
                known = false;
            }
        }
        List<String> seasons = model.catalogue().seasons();
        List<String> lights = model.catalogue().lights();
        look.stage()
                .season()
                .filter(season -> !seasons.contains(season))
                .ifPresent(season ->
                        problems.unknown("unknown-season", pointer + "/stage/season", "season", season, seasons));
        look.light()
                .filter(light -> !lights.contains(light))
                .ifPresent(light -> problems.unknown("unknown-light", pointer + "/light", "light", light, lights));
        if (known) {
            stage(look, pointer);
        }
    }

    /** Expresses some animal, because that tells what the stage lacks. */
    private void stage(PlannedLook look, String pointer) {
        Map<String, String> expressions = new LinkedHashMap<>();
        compiled.lociRead(look.traits())
                .forEach(locus ->
                        expressions.put(locus, model.locus(locus).expressions().get(0)));
        try {
            compiled.express(
                    expressions,
                    Sex.FEMALE,
                    look.stage(),
                    look.traits(),
                    (draw, chances) -> chances.outcomes().iterator().next());
        } catch (ProblemsException lacking) {
            lacking.problems().forEach(problem -> problems.add(problem.pointing(pointer + "/stage")));
        }
    }

    /** What a founder was recorded with is written down at some look. */
    void seen(Founder founder, List<PlannedLook> looks, String pointer) {
        for (int i = 0; i < founder.looks().size(); i++) {
            Sighting seen = founder.looks().get(i);
            String at = pointer + Pointer.of("looks", Integer.toString(i));
            states(seen, at);
            if (Selection.telling(model, looks, seen, Whom.FOUNDERS).isEmpty()) {
                problems.add(
                        "look-not-planned",
                        at,
                        "a founder was recorded with \"" + seen
                                + "\", but no look is planned that writes all of that down",
                        "a look of founders at these traits, then, late enough and in a light to tell them");
            }
        }
    }

    private void states(Sighting seen, String pointer) {
        seen.look().asMap().forEach((trait, state) -> {
            List<String> states = trait.equals(Sex.VARIABLE) ? Sex.words() : model.states(trait);
            if (!states.contains(state)) {
                problems.unknown("unknown-state", pointer, "state of " + trait, state, states);
            }
        });
    }

    private void sign(Sighting sign, List<PlannedLook> looks) {
        states(sign, "/ascertainment/look");
        List<PlannedLook> telling = Selection.telling(model, looks, sign);
        if (telling.isEmpty()) {
            problems.add(
                    "look-not-planned",
                    "/ascertainment/look",
                    "litters are known by \"" + sign + "\", but no look is planned that writes all of that down",
                    "a look at these traits, then, late enough and in a light to tell them");
        }
        for (PlannedLook look : telling) {
            if (!look.share().isOne()) {
                problems.add(
                        "look-at-some",
                        Pointer.of("looks", Integer.toString(looks.indexOf(look)), "share"),
                        "litters are known by this look, but only " + look.share() + " of the animals are looked at",
                        "a look at every animal, and the chance to be noticed stated with the probands");
            }
        }
    }

    /** Whether a litter is heard of is a matter of all its scored kits. */
    static void listed(Pedigree plan, Ascertainment ascertainment, Problems problems) {
        if (Selection.signOfKits(ascertainment).isEmpty()) {
            return;
        }
        for (Litter litter : plan.litters().values()) {
            int listed = litter.kits().size();
            if (listed == 0 || litter.scoredCount().orElse(listed) > listed) {
                problems.add(
                        "kits-not-listed",
                        Pointer.of("litters", litter.id(), "kits"),
                        "litters are kept because of their kits, but of this one " + listed + " are listed"
                                + (litter.scoredCount().isPresent()
                                        ? " and " + litter.scoredCount().getAsInt() + " were scored"
                                        : ""),
                        "every kit that was scored, at least one");
            }
        }
    }
}
