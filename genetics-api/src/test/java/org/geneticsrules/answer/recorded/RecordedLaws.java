package org.geneticsrules.answer.recorded;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.recorded.MayCarry.Word;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.Judgeable;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers about random pedigrees against a list of every way in which they may have come about. */
@Once
class RecordedLaws {

    private static final double CLOSE = 1e-11;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    private static RecordedAnswers asked(Model model, Kindred kindred) {
        return RecordedAnswers.of(
                        Answers.of(CompiledModel.of(model), List.of()), RecordedKindred.pedigree(model, kindred))
                .with(RecordedKindred.confusions(kindred));
    }

    @Property(tries = 30)
    void words_are_those_of_what_is_possible(@ForAll("pedigrees") RandomPedigree random) {
        words(random);
    }

    /** Some words are said of one random pedigree in six, so these were looked for: all are said of them, as all is decided. */
    @Example
    void every_word_is_that_of_what_is_possible() {
        Set<Word> said = EnumSet.noneOf(Word.class);
        for (long seed : new long[] {17, 18, 21, 25}) {
            said.addAll(words(RandomPedigrees.pedigree(seed)));
        }
        assertEquals(EnumSet.complementOf(EnumSet.of(Word.UNDECIDED)), said);
    }

    /** Compares, and tells which words were said. */
    private static Set<Word> words(RandomPedigree random) {
        Set<Word> said = EnumSet.noneOf(Word.class);
        Kindred named = RecordedKindred.scored(random.kindred());
        Kindred kindred = new Kindred(named.members(), named.litters(), List.of());
        Worlds possible = Worlds.possible(random.genome(), kindred);
        RecordedAnswers asked = asked(random.model(), kindred);
        for (Kindred.Member member : kindred.members()) {
            MayCarry found = (MayCarry) asked.mayCarry(member.id(), Set.of()).finding();
            for (MayCarry.AtLocus at : found.loci()) {
                Set<String> pairs = possible.size() == 0
                        ? Set.of()
                        : possible.genotypes(member.id(), at.locus()).keySet();
                for (MayCarry.OfAllele one : at.alleles()) {
                    Word expected = expected(pairs, one.allele());
                    // where only other relatives contradict one another, this animal is not told of
                    if (expected != Word.CONTRADICTED) {
                        assertEquals(expected, one.word(), random + " " + member.id() + " " + one.allele());
                    }
                    said.add(one.word());
                }
            }
        }
        return said;
    }

    private static Word expected(Set<String> pairs, Allele allele) {
        long with = pairs.stream()
                .filter(pair -> Arrays.asList(pair.split("/", -1)).contains(allele.id()))
                .count();
        if (pairs.isEmpty()) {
            return Word.CONTRADICTED;
        }
        return with == 0 ? Word.CANNOT_CARRY : with == pairs.size() ? Word.CARRIES : Word.MAY_CARRY;
    }

    @Property(tries = 18)
    void a_trail_leads_from_nothing_recorded_to_all_that_is(@ForAll("pedigrees") RandomPedigree random) {
        steps(random);
    }

    /** One random pedigree in ten has a trail of several steps whose factors can be multiplied, as these have. */
    @ParameterizedTest
    @CsvSource({"3, 29", "3, 36", "3, 54", "8, 13"})
    void a_trail_of_several_steps_leads_there(int steps, long seed) {
        assertEquals(steps, steps(RandomPedigrees.pedigree(seed)));
    }

    /** Compares, and tells how many steps the longest trail has that can be multiplied; -1 if there is none. */
    private static int steps(RandomPedigree random) {
        int most = -1;
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Worlds all = Worlds.of(random.genome(), kindred);
        // without records there may be far more ways than can be listed
        Optional<Worlds> unrecorded = Worlds.within(random.genome(), unrecorded(kindred), 30_000);
        if (all.size() == 0 || unrecorded.isEmpty() || unrecorded.get().size() == 0) {
            return most;
        }
        Worlds none = unrecorded.get();
        RecordedAnswers asked = asked(random.model(), kindred);
        String locus = random.model().loci().keySet().iterator().next();
        for (Kindred.Member member : kindred.members()) {
            for (Allele allele : random.model().locus(locus).alleles().values()) {
                CarrierTrail.Trail trail = ((CarrierTrail)
                                asked.carrierTrail(member.id(), new HiddenAllele(locus, allele))
                                        .finding())
                        .trails()
                        .get(0);
                double before = carries(none.genotypes(member.id(), locus), allele);
                double after = carries(all.genotypes(member.id(), locus), allele);
                assertEquals(before, trail.before().value().orElseThrow(), CLOSE);
                assertEquals(after, trail.after().value().orElseThrow(), CLOSE);
                boolean settled =
                        trail.steps().stream().anyMatch(step -> step.factor().isEmpty());
                if (!settled && before > 0 && before < 1 && after > 0 && after < 1) {
                    double odds = before / (1 - before);
                    for (CarrierTrail.Step step : trail.steps()) {
                        odds *= step.factor().orElseThrow();
                    }
                    assertEquals(after, odds / (1 + odds), 1e-9);
                    most = Math.max(most, trail.steps().size());
                }
            }
        }
        return most;
    }

    private static double carries(Map<String, Probability> genotypes, Allele allele) {
        return genotypes.entrySet().stream()
                .filter(one -> Arrays.asList(one.getKey().split("/", -1)).contains(allele.id()))
                .mapToDouble(one -> one.getValue().toDouble())
                .sum();
    }

    private static Kindred unrecorded(Kindred kindred) {
        return new Kindred(
                kindred.members().stream()
                        .map(one -> new Kindred.Member(one.id(), one.sex(), one.population(), List.of(), List.of()))
                        .toList(),
                kindred.litters(),
                kindred.confusions());
    }

    /** The sires of random litters, one for the litter or one for each kit. */
    @Property(tries = 60)
    void sires_are_as_likely_as_in_the_list(@ForAll("pedigrees") RandomPedigree random) {
        sires(random);
    }

    /** Records rule a male out in one random pedigree of a hundred; these are some, of a litter or of a kit. */
    @ParameterizedTest
    @CsvSource({
        "EXCLUDED of a litter, 118",
        "EXCLUDED of a kit, 319",
        "EXCLUDED of a kit, 385",
        "EXCLUDED of a kit, 584",
        "EXCLUDED of a kit, 660"
    })
    void excluded_sires_have_no_chance(String excluded, long seed) {
        assertTrue(sires(RandomPedigrees.pedigree(seed)).contains(excluded));
    }

    /** A male who, as he may be, has no young that live with this dam: his share is then that of the others. */
    @Example
    void a_share_depends_on_who_can_have_young() {
        sires(RandomPedigrees.pedigree(2775516831347244671L));
    }

    /** Compares, and tells which words were said of a sire of what. */
    private static Set<String> sires(RandomPedigree random) {
        Set<String> said = new TreeSet<>();
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Worlds worlds = Worlds.of(random.genome(), kindred);
        RecordedAnswers asked = asked(random.model(), kindred);
        for (Kindred.Litter litter : kindred.litters()) {
            if (litter.sires().size() < 2 || worlds.size() == 0) {
                continue;
            }
            Parentage found = (Parentage)
                    asked.parentage(ParentageQuestion.of(litter.id())).finding();
            for (Parentage.OfKit kit : found.kits()) {
                Map<Integer, Probability> sires =
                        worlds.sires(kit.kit().orElse(litter.kits().get(0)));
                for (int male = 0; male < kit.males().size(); male++) {
                    Parentage.OfMale one = kit.males().get(male);
                    double expected = sires.getOrDefault(male, Probability.ZERO).toDouble();
                    if (one.word() != Parentage.Word.CONTRADICTED) {
                        assertEquals(expected, one.chances().get(0).value().orElseThrow(), CLOSE, random + " " + found);
                        if (one.word() == Parentage.Word.EXCLUDED && noMutation(random.model())) {
                            assertEquals(0, expected, "what is excluded has no chance");
                        }
                        said.add(one.word() + " of a " + (found.perKit() ? "kit" : "litter"));
                    }
                }
            }
        }
        return said;
    }

    private static boolean noMutation(Model model) {
        return model.loci().values().stream().allMatch(locus -> locus.mutation().isEmpty());
    }

    /** A kit that might be born, put into the list: the share of the worlds in which it shows a look. */
    @Property(tries = 40)
    void the_next_kit_shows_each_look_as_often_as_in_the_list(@ForAll("pedigrees") RandomPedigree random) {
        looks(random);
    }

    /** In one random pedigree of six the next kit may have a look or not, as in these. */
    @ParameterizedTest
    @ValueSource(longs = {11, 18, 25, 31})
    void looks_by_chance_are_as_likely_as_in_the_list(long seed) {
        assertTrue(looks(RandomPedigrees.pedigree(seed)).contains("perhaps"));
    }

    /** Compares, and tells how likely looks were. */
    private static Set<String> looks(RandomPedigree random) {
        Set<String> met = new TreeSet<>();
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Model model = random.model();
        Optional<Kindred.Member> dam = first(kindred, "female");
        Optional<Kindred.Member> sire = first(kindred, "male");
        if (dam.isEmpty() || sire.isEmpty() || kindred.members().size() > 6) {
            return met;
        }
        CompiledModel compiled = CompiledModel.of(model);
        // early, as the list has every way to come to that age
        LifeStage stage = new LifeStage(
                OptionalInt.of(2),
                OptionalInt.of(2),
                model.catalogue().seasons().stream().findFirst());
        for (String trait : model.visibleTraits().stream().limit(2).toList()) {
            View view = new View(List.of(trait), stage, Census.CONCEIVED);
            List<Phenotype> looks = compiled.diagram(view).outcomes();
            if (model.catalogue().judgeable(trait, stage) != Judgeable.YES
                    || looks.stream().anyMatch(look -> look.traits().isEmpty())) {
                continue;
            }
            Optional<Worlds> born = Worlds.within(random.genome(), with(kindred, dam, sire, Optional.empty()), 30_000);
            if (born.isEmpty() || born.get().size() == 0) {
                return met;
            }
            NextLitter.Course course = ((NextLitter) asked(model, kindred)
                            .nextLitter(NextLitterQuestion.of(
                                            sire.orElseThrow().id(),
                                            dam.orElseThrow().id(),
                                            Set.of(trait))
                                    .at(stage))
                            .finding())
                    .courses()
                    .get(0);
            Map<String, String> when = when(stage);
            for (Phenotype look : looks) {
                Optional<Worlds> showing = Worlds.within(
                        random.genome(),
                        with(kindred, dam, sire, Optional.of(new Kindred.Sighting(when, List.of(look.asMap())))),
                        30_000);
                if (showing.isPresent() && kindred.confusions().isEmpty()) {
                    double expected = showing.get().size() == 0
                            ? 0
                            : showing.get().likelihood().toDouble()
                                    / born.get().likelihood().toDouble();
                    Chance chance = course.looks().getOrDefault(look, Chance.exact(0));
                    assertEquals(Standing.EXACT, chance.standing());
                    assertEquals(expected, chance.value().orElseThrow(), CLOSE, random + " " + look);
                    met.add(expected == 0 ? "never" : expected == 1 ? "always" : "perhaps");
                }
            }
        }
        return met;
    }

    private static Map<String, String> when(LifeStage stage) {
        Map<String, String> when = new LinkedHashMap<>();
        stage.weeks().ifPresent(weeks -> when.put("week", Integer.toString(weeks)));
        stage.moult().ifPresent(moult -> when.put("moult", Integer.toString(moult)));
        stage.season().ifPresent(season -> when.put("season", season));
        return when;
    }

    private static Optional<Kindred.Member> first(Kindred kindred, String sex) {
        return kindred.members().stream().filter(one -> one.sex().equals(sex)).findFirst();
    }

    private static Kindred with(
            Kindred kindred,
            Optional<Kindred.Member> dam,
            Optional<Kindred.Member> sire,
            Optional<Kindred.Sighting> seen) {
        List<Kindred.Member> members = new ArrayList<>(kindred.members());
        members.add(new Kindred.Member(
                "a kit that might be born", "", "", seen.map(List::of).orElse(List.of()), List.of()));
        List<Kindred.Litter> litters = new ArrayList<>(kindred.litters());
        litters.add(new Kindred.Litter(
                "a litter that might be born",
                dam.orElseThrow().id(),
                "",
                List.of(new Kindred.Candidate(sire.orElseThrow().id(), "", Probability.ONE)),
                false,
                "scored",
                List.of("a kit that might be born")));
        return new Kindred(members, litters, kindred.confusions());
    }
}
