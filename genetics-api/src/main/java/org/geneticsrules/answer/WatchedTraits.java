package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.LifeStage;

/**
 * What the young of a test mating are looked at for: the traits asked for, together; or else each trait by itself that can be told at
 * the stage and on which a locus bears. Not thread-safe.
 */
final class WatchedTraits {

    private final CompiledModel compiled;
    private final LifeStage stage;
    private final Map<List<String>, Asked> asked = new LinkedHashMap<>();
    private final Map<String, String> untold = new LinkedHashMap<>();
    private final Map<String, Set<String>> unseen = new LinkedHashMap<>();

    /**
     * Finds the traits.
     *
     * @throws ProblemsException if a trait asked for is unknown or cannot be told at the stage
     */
    WatchedTraits(Answers answers, TestMatingQuestion question) {
        this.compiled = answers.compiled();
        this.stage = question.stage();
        compiled.model().catalogue().check(stage);
        String who = "the " + answers.young().many() + " of a test mating";
        Stages stages = Stages.ofYoung(compiled, List.of(question.animal()), Animal.unknown(compiled));
        if (!question.traits().isEmpty()) {
            Asked all = Asked.of(compiled, who, question.traits(), stage, stages);
            asked.put(all.traits(), all);
            return;
        }
        for (String trait : compiled.model().visibleTraits()) {
            try {
                Asked one = Asked.of(compiled, who, Set.of(trait), stage, stages);
                asked.put(one.traits(), one);
            } catch (ProblemsException e) {
                Problem first = e.problems().get(0);
                untold.put(
                        trait,
                        first.expected().map(needed -> "each needs " + needed).orElse(first.message()));
            }
        }
    }

    LifeStage stage() {
        return stage;
    }

    /** The traits on which a locus bears, as they are looked at, those of the fewest loci first; what would be too, but cannot be told, is noticed. */
    List<List<String>> of(String locus) {
        untold.forEach((trait, why) -> {
            if (compiled.lociRead(Set.of(trait)).contains(locus)) {
                unseen.computeIfAbsent(why, reason -> new LinkedHashSet<>()).add(trait);
            }
        });
        return asked.keySet().stream()
                .filter(traits -> compiled.lociRead(view(traits)).contains(locus))
                .sorted(Comparator.comparingInt(
                        traits -> compiled.lociRead(view(traits)).size()))
                .toList();
    }

    /** What is looked at to tell some traits, of all young that are born. */
    View view(List<String> traits) {
        LifeStage settled = stage;
        for (Map.Entry<List<String>, Asked> one : asked.entrySet()) {
            boolean among = one.getKey().stream().anyMatch(traits::contains);
            if (among && !one.getValue().stage().equals(stage)) {
                settled = one.getValue().stage();
            }
        }
        return new View(ImmutableList.copyOf(traits), settled, Census.BORN);
    }

    /** Those of some traits of which the stage does not say whether they can be told. */
    Set<String> takenAsTold(Set<String> traits) {
        Set<String> taken = new LinkedHashSet<>();
        asked.values().forEach(one -> taken.addAll(one.takenAsTold()));
        taken.retainAll(traits);
        return taken;
    }

    List<String> notices() {
        List<String> notices = new ArrayList<>();
        unseen.forEach((why, traits) -> notices.add("not looked at: " + String.join(", ", traits) + "; " + why));
        return notices;
    }
}
