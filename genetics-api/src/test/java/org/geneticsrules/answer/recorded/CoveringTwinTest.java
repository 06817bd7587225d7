package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.recorded.Later.OfState;
import org.geneticsrules.answer.recorded.Later.OfTrait;
import org.geneticsrules.answer.recorded.LookNext.Whether;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Choices;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.junit.jupiter.api.Test;

/**
 * The masks by which a state may be hidden, against every life that every animal may lead which the records allow: those masks that are
 * active in a life in which the state is shown and another lies beneath, and that no other active mask is over. None is missed; and none
 * is told too many where nobody looked at the animal before. Where somebody did, a mask may be told that only a state beneath another mask
 * would rule out.
 */
@Once
class CoveringTwinTest {

    private static final int MOST = 10_000;

    @Test
    void masks_are_those_of_some_life() {
        Set<String> met = new TreeSet<>();
        LongStream.rangeClosed(1, 60).forEach(seed -> masks(RandomPedigrees.pedigree(seed), met));
        assertEquals(Set.of("a mask", "ruled out", "several masks", "without a mask"), met);
    }

    private static void masks(RandomPedigree random, Set<String> met) {
        Kindred kindred = RecordedKindred.scored(random.kindred()).withoutConfusions();
        Model model = random.model();
        LifeStage stage = new LifeStage(
                OptionalInt.of(2),
                OptionalInt.of(2),
                model.catalogue().seasons().stream().findFirst());
        Map<String, String> when = new LinkedHashMap<>(Map.of("week", "2", "moult", "2"));
        stage.season().ifPresent(season -> when.put("season", season));
        Optional<Worlds> possible = Worlds.possibleWithin(random.genome(), kindred, MOST);
        if (model.masks().isEmpty() || possible.isEmpty() || possible.get().size() == 0) {
            return;
        }
        RecordedAnswers asked = RecordedAnswers.of(
                Answers.of(CompiledModel.of(model), List.of()), RecordedKindred.pedigree(model, kindred));
        for (Kindred.Member member : kindred.members().stream().limit(3).toList()) {
            if (!isClear(model, member)) {
                continue;
            }
            Later found =
                    (Later) asked.later(LaterQuestion.of(member.id(), stage)).finding();
            for (OfTrait row : found.traits()) {
                Map<String, Set<String>> any = new LinkedHashMap<>();
                Map<String, Set<String>> expected = new LinkedHashMap<>();
                for (Animal animal : possible.get().animals(member.id()).keySet()) {
                    lives(random, animal, member, row.trait(), when, any, expected);
                }
                for (OfState one : row.states()) {
                    if (one.whether() == Whether.POSSIBLE) {
                        Set<String> masks = expected.getOrDefault(one.state(), Set.of());
                        Set<String> told = new HashSet<>(one.hiddenBy());
                        String which = random.seed() + " " + member + " " + row.trait() + " " + one + " but " + masks;
                        assertTrue(told.containsAll(masks), which);
                        assertTrue(!member.sightings().isEmpty() || told.equals(masks), which);
                        met.add(masks.isEmpty() ? "without a mask" : masks.size() > 1 ? "several masks" : "a mask");
                        if (!told.containsAll(any.getOrDefault(one.state(), Set.of()))) {
                            met.add("ruled out");
                        }
                    }
                }
            }
        }
    }

    /** Whether all that was seen of an animal counts, so that it need not be found out here what does. */
    private static boolean isClear(Model model, Kindred.Member member) {
        return member.sightings().stream().allMatch(seen -> {
            OptionalInt week = count(seen.stage(), "week");
            OptionalInt moult = count(seen.stage(), "moult");
            LifeStage stage =
                    new LifeStage(week, moult, Optional.ofNullable(seen.stage().get("season")));
            return week.isPresent()
                    && moult.isPresent()
                    && (stage.season().isPresent()
                            || model.catalogue().seasons().isEmpty())
                    && seen.looks().get(0).keySet().stream()
                            .allMatch(trait -> model.catalogue().judgeable(trait, stage) == Judgeable.YES);
        });
    }

    private static OptionalInt count(Map<String, String> stage, String clock) {
        return stage.containsKey(clock) ? OptionalInt.of(Integer.parseInt(stage.get(clock))) : OptionalInt.empty();
    }

    /** Goes through every life of an animal, and collects masks by the state they show: of any life, and of lives that agree with what was seen. */
    private static void lives(
            RandomPedigree random,
            Animal animal,
            Kindred.Member member,
            String trait,
            Map<String, String> when,
            Map<String, Set<String>> any,
            Map<String, Set<String>> fitting) {
        Choices.all(chance -> {
            Life life = new Life(random.genome(), animal, chance);
            boolean fits = member.sightings().stream()
                    .allMatch(seen -> seen.looks().stream().anyMatch(look -> agrees(life, seen.stage(), look)));
            Optional<String> shown = life.shown(trait, when);
            if (shown.isPresent() && !shown.equals(life.own(trait, when))) {
                Set<String> deciding = deciding(random.model(), life, trait, when);
                any.computeIfAbsent(shown.get(), key -> new LinkedHashSet<>()).addAll(deciding);
                if (fits) {
                    fitting.computeIfAbsent(shown.get(), key -> new LinkedHashSet<>())
                            .addAll(deciding);
                }
            }
            return fits;
        });
    }

    private static boolean agrees(Life life, Map<String, String> stage, Map<String, String> look) {
        return look.entrySet().stream()
                .allMatch(one -> life.shown(one.getKey(), stage)
                        .map(one.getValue()::equals)
                        .orElse(true));
    }

    private static Set<String> deciding(Model model, Life life, String trait, Map<String, String> when) {
        Set<String> active = new LinkedHashSet<>(life.activeMasks(when));
        active.removeIf(mask -> !model.masks().get(mask).covers().containsKey(trait));
        Set<String> deciding = new LinkedHashSet<>(active);
        deciding.removeIf(mask -> active.stream().anyMatch(other -> model.isOver(other, mask)));
        return deciding;
    }
}
