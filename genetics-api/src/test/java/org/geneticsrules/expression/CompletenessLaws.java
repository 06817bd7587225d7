package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Inspection;
import org.geneticsrules.trait.Clock;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/** What the report says of a model is what living every life in it shows. */
@Once
class CompletenessLaws {

    /** Few models have more lives than can be lived in a moment: those with progressions on both clocks. */
    private static final long MOST_LIVES = 20_000;

    private record Drawn(Model model, Completeness report, Inspection lived) {
        Inspection.Met met(String trait, String state) {
            return Optional.ofNullable(lived.states.get(trait))
                    .map(states -> states.get(state))
                    .orElseGet(Inspection.Met::new);
        }

        List<Sex> sexes() {
            return model.distinguishesSex() ? List.of(Sex.values()) : List.of(Sex.FEMALE);
        }
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs().between(0, Long.MAX_VALUE);
    }

    @Property(tries = 25)
    void the_report_says_what_every_life_shows(@ForAll("seeds") long seed) {
        Inspection inspection = prepared(RandomModels.whole(seed));
        Assume.that(inspection.lives() <= MOST_LIVES);
        agrees(RandomModels.whole(seed), inspection);
    }

    /** Only where two progressions go by one clock can it be that not all of their states meet. */
    @Example
    @Tag("long")
    void the_report_knows_which_states_meet_at_one_age() {
        int checked = 0;
        for (long seed = 0; checked < 15; seed++) {
            Model model = RandomModels.whole(seed);
            Inspection inspection = prepared(model);
            if (inspection.sharesClock() && inspection.lives() <= MOST_LIVES / 2) {
                agrees(model, inspection);
                checked++;
            }
        }
    }

    private static Inspection prepared(Model model) {
        return new Inspection(
                new Genome(DocumentMaps.of(model)), model.catalogue().seasons());
    }

    private static void agrees(Model model, Inspection inspection) {
        Drawn drawn = new Drawn(model, Completeness.of(model), inspection.live());
        gapsAgree(drawn);
        reachedAgrees(drawn);
        boundsAgree(drawn);
        likenessAgrees(drawn);
    }

    /** Each life lies in exactly one box if it shows no state, else in none; and each box holds such a life. */
    private static void gapsAgree(Drawn drawn) {
        for (TraitRule rule : drawn.model().rules().values()) {
            for (boolean shown : new boolean[] {false, true}) {
                if (shown && !rule.visible()) {
                    continue;
                }
                List<Condition> boxes = drawn.report().gaps().stream()
                        .filter(gap -> gap.trait().equals(rule.trait()) && (shown ? gap.shown() : gap.own()))
                        .flatMap(gap -> gap.where().stream())
                        .toList();
                Set<Condition> met = new LinkedHashSet<>();
                drawn.lived()
                        .gaps
                        .get((shown ? "shown " : "own ") + rule.trait())
                        .forEach((at, open) -> {
                            List<Condition> around = boxes.stream()
                                    .filter(box -> box.holds(at::get))
                                    .toList();
                            assertEquals(
                                    open ? 1 : 0, around.size(), () -> drawn.model() + " " + rule.trait() + " " + at);
                            met.addAll(around);
                        });
                assertEquals(new LinkedHashSet<>(boxes), met, () -> drawn.model() + " " + rule.trait());
            }
        }
    }

    private static Set<String> names(Drawn drawn, Completeness.Part part) {
        return drawn.report().unreached().stream()
                .filter(one -> one.part() == part)
                .map(one -> one.pointer() + " " + one.name())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static void reachedAgrees(Drawn drawn) {
        Model model = drawn.model();
        Map<Completeness.Part, Set<String>> expected = new TreeMap<>();
        for (Completeness.Part part : Completeness.Part.values()) {
            expected.put(part, new TreeSet<>());
        }
        for (Locus locus : model.loci().values()) {
            for (String expression : locus.expressions()) {
                boolean any = false;
                for (Sex sex : Sex.values()) {
                    for (AllelePair pair : locus.pairs(sex)) {
                        any |= locus.expression(pair, sex).equals(expression);
                    }
                }
                if (!any) {
                    int rank = locus.expressions().indexOf(expression);
                    expected.get(Completeness.Part.EXPRESSION)
                            .add("/loci/" + locus.id() + "/expressions/" + rank + " " + expression);
                }
            }
        }
        for (TraitRule stated : model.rules().values()) {
            stated.allCases().forEach(one -> {
                String pointer = stated.pointer(one);
                boolean held = drawn.lived().held.contains(pointer);
                boolean rest = stated.otherwise().equals(Optional.of(one));
                if (!held) {
                    expected.get(rest ? Completeness.Part.OTHERWISE : Completeness.Part.CASE)
                            .add(pointer + " " + one.id());
                } else if (one.gives() instanceof CaseState.Threshold sums) {
                    sums.states().forEach(state -> {
                        String at =
                                pointer + "/threshold" + (sums.cuts().containsKey(state) ? "/cuts/" + state : "/below");
                        if (!drawn.lived().held.contains(at)) {
                            expected.get(Completeness.Part.THRESHOLD_STATE).add(at + " " + state);
                        }
                    });
                }
            });
            for (String state : stated.states()) {
                Inspection.Met met = drawn.met(stated.trait(), state);
                if (!met.born) {
                    expected.get(met.sexes.isEmpty() ? Completeness.Part.STATE : Completeness.Part.UNBORN_STATE)
                            .add("/traits/" + stated.trait() + " " + state);
                }
            }
        }
        for (String mask : model.masks().keySet()) {
            if (!drawn.lived().held.contains("/masks/" + mask)) {
                expected.get(Completeness.Part.MASK).add("/masks/" + mask + " " + mask);
            }
        }
        for (Completeness.Part part : List.of(
                Completeness.Part.EXPRESSION,
                Completeness.Part.CASE,
                Completeness.Part.OTHERWISE,
                Completeness.Part.THRESHOLD_STATE,
                Completeness.Part.STATE,
                Completeness.Part.UNBORN_STATE,
                Completeness.Part.MASK)) {
            assertEquals(expected.get(part), names(drawn, part), () -> model + " " + part);
        }
    }

    private static void boundsAgree(Drawn drawn) {
        List<Completeness.Limited> expected = new ArrayList<>();
        for (TraitRule rule : drawn.model().rules().values()) {
            for (String state : rule.states()) {
                Inspection.Met met = drawn.met(rule.trait(), state);
                if (!met.sexes.isEmpty()) {
                    List<String> seasons = drawn.model().catalogue().seasons();
                    Completeness.Limited one = new Completeness.Limited(
                            rule.trait(),
                            state,
                            met.sexes.size() == 2
                                    ? Optional.empty()
                                    : Sex.of(met.sexes.iterator().next()),
                            met.seasons.size() == seasons.size()
                                    ? List.of()
                                    : seasons.stream()
                                            .filter(met.seasons::contains)
                                            .toList(),
                            new LifeStage(first(met, Clock.WEEK), first(met, Clock.MOULT), Optional.empty()),
                            new LifeStage(
                                    last(drawn, met, Clock.WEEK), last(drawn, met, Clock.MOULT), Optional.empty()));
                    if (one.isBound()) {
                        expected.add(one);
                    }
                }
            }
        }
        assertEquals(expected, drawn.report().limited(), () -> drawn.model().toString());
    }

    private static OptionalInt first(Inspection.Met met, Clock clock) {
        TreeSet<Integer> counts = met.counts.getOrDefault(clock.word(), new TreeSet<>(List.of(0)));
        return counts.first() == 0 ? OptionalInt.empty() : OptionalInt.of(counts.first());
    }

    /** The last count, unless a whole circle of possible states before the end shows it again. */
    private static OptionalInt last(Drawn drawn, Inspection.Met met, Clock clock) {
        int end = drawn.lived().last();
        TreeSet<Integer> counts = met.counts.getOrDefault(clock.word(), new TreeSet<>(List.of(end)));
        return counts.last() > end - drawn.lived().circle() ? OptionalInt.empty() : OptionalInt.of(counts.last());
    }

    private static void likenessAgrees(Drawn drawn) {
        Map<String, Map<Sex, List<Set<String>>>> expected = new LinkedHashMap<>();
        Set<String> idle = new TreeSet<>();
        Map<String, List<Set<String>>> alleles = new TreeMap<>();
        for (Locus locus : drawn.model().loci().values()) {
            Map<Sex, List<Set<String>>> bySex = new LinkedHashMap<>();
            boolean differs = false;
            for (Sex sex : drawn.sexes()) {
                Map<Object, Set<String>> groups = new LinkedHashMap<>();
                locus.pairs(sex)
                        .forEach(pair -> groups.computeIfAbsent(effect(drawn, locus, pair, sex), key -> new TreeSet<>())
                                .add(pair.toString()));
                differs |= groups.size() > 1;
                bySex.put(
                        sex,
                        groups.values().stream()
                                .filter(group -> group.size() > 1)
                                .toList());
            }
            expected.put(locus.id(), bySex);
            if (!differs) {
                idle.add("/loci/" + locus.id());
            }
            Map<Object, Set<String>> same = new LinkedHashMap<>();
            List<String> ids = new ArrayList<>(locus.alleles().keySet());
            for (String allele : ids) {
                same.computeIfAbsent(inAnyGenotype(drawn, locus, ids.indexOf(allele)), key -> new TreeSet<>())
                        .add(allele);
            }
            List<Set<String>> groups =
                    same.values().stream().filter(group -> group.size() > 1).toList();
            if (!groups.isEmpty()) {
                alleles.put(locus.id(), groups);
            }
        }
        Map<String, Map<Sex, List<Set<String>>>> found = new LinkedHashMap<>();
        for (Locus locus : drawn.model().loci().values()) {
            Map<Sex, List<Set<String>>> bySex = new LinkedHashMap<>();
            for (Sex sex : drawn.sexes()) {
                bySex.put(
                        sex,
                        drawn.report().alikeGenotypes().stream()
                                .filter(one -> one.locus().equals(locus.id())
                                        && one.sex().orElse(sex) == sex)
                                .flatMap(one -> one.groups().stream())
                                .map(group -> (Set<String>) new TreeSet<>(group))
                                .toList());
            }
            found.put(locus.id(), bySex);
        }
        assertEquals(expected, found, () -> drawn.model().toString());
        assertEquals(
                idle,
                drawn.report().idle().stream()
                        .map(Completeness.Idle::pointer)
                        .filter(pointer -> pointer.startsWith("/loci/"))
                        .collect(Collectors.toCollection(TreeSet::new)));
        Map<String, List<Set<String>>> alike = new TreeMap<>();
        drawn.report()
                .alikeAlleles()
                .forEach(one -> alike.put(
                        one.locus(),
                        one.groups().stream()
                                .map(group -> (Set<String>) new TreeSet<>(group))
                                .toList()));
        assertEquals(alleles, alike, () -> drawn.model().toString());
    }

    /** All looks that a genotype can have part in, and what is stated of its life. */
    private static Object effect(Drawn drawn, Locus locus, AllelePair pair, Sex sex) {
        Probability birth = Probability.ONE;
        Probability scored = Probability.ONE;
        for (Viability one : drawn.model().viability().values()) {
            if (one.locus().equals(locus.id())
                    && one.expressions().contains(locus.expression(pair, sex))
                    && one.sex().orElse(sex) == sex) {
                birth = birth.times(one.birth());
                scored = scored.times(one.scored());
            }
        }
        String plain = pair.alleles().stream().map(allele -> allele.id()).collect(Collectors.joining("/"));
        return List.of(drawn.lived().looks.get(sex.word()).get(locus.id()).get(plain), birth, scored);
    }

    /** What an allele does alone and beside each other; beside itself and beside one like it, it does the same. */
    private static Object inAnyGenotype(Drawn drawn, Locus locus, int allele) {
        List<Object> effects = new ArrayList<>();
        for (Sex sex : drawn.sexes()) {
            int strands = locus.transmission().strands(sex);
            if (strands == 1) {
                effects.add(effect(drawn, locus, locus.of(allele), sex));
            }
            for (int beside = 0; strands == 2 && beside < locus.alleles().size(); beside++) {
                effects.add(effect(drawn, locus, locus.pair(allele, beside), sex));
            }
        }
        return effects;
    }

    /** Random models show every kind of finding that their making allows, and models free of it. */
    @Example
    @Tag("long")
    void every_kind_of_finding_is_met() {
        Map<String, Integer> met = new TreeMap<>();
        int models = 400;
        for (long seed = 0; seed < models; seed++) {
            Completeness report = Completeness.of(RandomModels.whole(seed));
            Set<String> kinds = new TreeSet<>();
            report.gaps().forEach(gap -> kinds.add("gap in " + gap.about().words()));
            report.gaps().stream()
                    .flatMap(gap -> gap.where().stream())
                    .flatMap(box -> box.names().stream())
                    .forEach(name -> kinds.add(
                            name.startsWith("/") ? "gap by chance" : name.length() > 1 ? "gap by " + name : "gap"));
            report.unreached().forEach(one -> {
                kinds.add(one.part().word());
                kinds.add(one.underOtherDominance() ? "reached under other dominance" : "ruled out");
            });
            report.alikeAlleles().forEach(one -> kinds.add("alike alleles"));
            report.alikeGenotypes()
                    .forEach(one -> kinds.add(one.sex().isPresent() ? "alike in one sex" : "alike genotypes"));
            report.idle().forEach(one -> kinds.add(one.read() ? "read in vain" : "unread"));
            report.limited().forEach(one -> {
                kinds.add(one.sex().isPresent() ? "one sex" : "");
                kinds.add(one.seasons().isEmpty() ? "" : "some seasons");
                kinds.add(one.from().equals(LifeStage.unstated()) ? "" : "from some age");
                kinds.add(one.until().equals(LifeStage.unstated()) ? "" : "until some age");
            });
            report.withoutRule().forEach(one -> kinds.add("no rule"));
            kinds.add(report.withoutEvidence().isEmpty() ? "" : "no evidence");
            kinds.add(report.graded().isEmpty() ? "" : "evidence");
            kinds.add(report.gaps().isEmpty() ? "no gap" : "");
            kinds.add(report.unreached().isEmpty() ? "all reached" : "");
            kinds.forEach(kind -> met.merge(kind, 1, Integer::sum));
        }
        for (String kind : List.of(
                "gap in own state and what is seen",
                "gap in what is seen",
                "gap in own state",
                "gap by chance",
                "gap by sex",
                "gap by season",
                "expression",
                "dominance",
                "viability",
                "case",
                "otherwise",
                "mask",
                "state",
                "unborn state",
                "threshold state",
                "progression state",
                "reached under other dominance",
                "ruled out",
                "alike alleles",
                "alike genotypes",
                "alike in one sex",
                "read in vain",
                "unread",
                "one sex",
                "some seasons",
                "from some age",
                "no rule",
                "no evidence",
                "evidence",
                "no gap",
                "all reached")) {
            assertTrue(met.getOrDefault(kind, 0) >= 3, () -> kind + " in " + met);
        }
        assertTrue(met.containsKey("until some age"), met::toString); // rare: a chain must leave a state for ever
    }
}
