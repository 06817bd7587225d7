package org.geneticsrules.answer;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Numbers that fit an answer whose reasons do not, and what such an answer rests on. */
@Once
class ReasonsLeftOutTest {

    private static final int LOCI = 11;

    /** Many small effects: the sum has few values, but is come by in 3 to the power of the loci ways. */
    private static Model sums() {
        ModelBuilder builder = Model.builder(
                "invented.sums",
                "1.0.0",
                Catalogue.builder("invented.traits", "1.0.0")
                        .trait("size", "small", "large")
                        .build());
        Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
        for (int i = 0; i < LOCI; i++) {
            String one = "A" + i;
            String other = "a" + i;
            builder.locus(
                    one,
                    locus -> locus.alleles(one, other)
                            .expressions("two", "one", "none")
                            .shows(one, "two")
                            .shows(one + "/" + other, "one")
                            .shows(other, "none"));
            doses.put(one, Map.of("two", 2, "one", 1));
        }
        return builder.trait(
                        "size",
                        size -> size.otherwise(
                                new CaseState.Threshold(
                                        doses, Distribution.certain(0), "small", Map.of("large", LOCI + 1)),
                                Optional.empty()))
                .build();
    }

    /** By symmetry large and the sums below the middle are equally likely: (1 - C(22, 11) / 2^22) / 2. */
    @Example
    void the_numbers_are_given_and_the_reasons_said_to_be_too_many() {
        Model model = sums();
        CompiledModel compiled = CompiledModel.of(model);
        List<String> text = new ArrayList<>();
        model.loci().values().forEach(locus -> text.add(locus.pairs().get(1).toString()));
        Animal parent = Animal.unknown(compiled).withGenotype(String.join(" ", text), OmittedLoci.UNKNOWN);
        UncertainCross cross = UncertainCross.of(compiled, parent.parent(), parent.parent());
        assertThrows(TooLargeException.class, () -> cross.explain(List.of("size")));

        Answer answer = Answers.of(compiled, List.of())
                .mating(MatingQuestion.of(parent, parent).lookingFor(Phenotype.of("size", "large")));
        assertEquals(Status.EXACT, answer.status());
        assertEquals(
                Optional.of("1744436/4194304"), // C(22, 11) = 705432
                answer.probability()
                        .map(chance -> chance.numerator()
                                        .multiply(BigInteger.valueOf(4194304))
                                        .divide(chance.denominator())
                                + "/4194304"));
        assertEquals(List.of(), answer.because());
        assertEquals(List.of(), answer.hidden());
        String notice = answer.notices().get(0);
        assertTrue(notice.startsWith("the numbers are exact, but their reasons"), notice);
        assertTrue(notice.contains("20000"), notice);
        assertTrue(notice.contains("ask about fewer traits"), notice);
        assertFalse(answer.evidence().statements().isEmpty());
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    /** Where the reasons fit, nothing that known parents' kits rest on is left out without them. */
    @Property(tries = 150)
    void all_that_the_reasons_rest_on_is_named(@ForAll("seeds") long seed) {
        Statistics.label("rests on").collect(restsOnTheSame(seed)).coverage(coverage -> {
            coverage.check("viability").percentage(p -> p > 3);
            coverage.check("group").percentage(p -> p > 3);
            coverage.check("rules").percentage(p -> p > 3);
        });
    }

    /** One random answer in nine rests on mutation and not on viability, so these were looked for. */
    @ParameterizedTest
    @ValueSource(longs = {10, 28, 37})
    void mutation_that_the_reasons_rest_on_is_named(long seed) {
        assertEquals("mutation", restsOnTheSame(seed));
    }

    private static String restsOnTheSame(long seed) {
        Model model = RandomModels.whole(seed);
        CompiledModel compiled = CompiledModel.of(model);
        SplittableRandom random = new SplittableRandom(seed);
        GenotypeSet sire = known(model, Sex.MALE, random);
        GenotypeSet dam = known(model, Sex.FEMALE, random);
        List<String> traits = List.copyOf(model.visibleTraits());
        LifeStage stage = new LifeStage(
                OptionalInt.of(random.nextInt(4)),
                OptionalInt.of(random.nextInt(4)),
                model.catalogue().seasons().stream().findFirst());
        View view = new View(
                List.of(traits.get(random.nextInt(traits.size()))),
                stage,
                List.of(Census.values()).get(random.nextInt(Census.values().length)));
        Optional<MatingExplanation> explained;
        try {
            explained = UncertainCross.of(compiled, Parent.among(sire), Parent.among(dam))
                    .explain(view);
        } catch (TooLargeException e) {
            return "too large";
        }
        if (explained.isEmpty()) {
            return "no kits";
        }
        Set<String> without = Inherited.statements(
                compiled, List.of(sire, dam), Inherited.pairs(model, sire, dam, compiled.lociRead(view)), view);
        assertTrue(
                without.containsAll(explained.get().statements()),
                () -> model + " " + view + " " + seed + ": " + explained.get().statements() + " in " + without);
        for (String kind : List.of("viability", "mutation", "group")) {
            if (without.stream().anyMatch(pointer -> pointer.contains("/" + kind))) {
                return kind;
            }
        }
        return "rules";
    }

    private static GenotypeSet known(Model model, Sex sex, SplittableRandom random) {
        GenotypeSet set = GenotypeSet.all(model).of(sex);
        for (Locus locus : model.loci().values()) {
            List<AllelePair> pairs = locus.pairs(sex);
            set = set.where(locus.id(), List.of(pairs.get(random.nextInt(pairs.size()))));
        }
        return set;
    }
}
