package org.geneticsrules.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelDocument;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.RandomAnimals.Parents;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Founders;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestReporter;

/** What random models of the whole language cover, counted over the models generated. */
@Tag("default-jdk")
class WholeModelsTest {

    private static final int MODELS = 500;

    /** In how many models each feature occurred. */
    private static final Map<String, Integer> SEEN = new LinkedHashMap<>();

    @BeforeAll
    static void measure() {
        for (long seed = 0; seed < MODELS; seed++) {
            Model model = RandomModels.whole(seed);
            groups(model);
            loci(model);
            rules(model);
            animals(model, new Genome(DocumentMaps.of(model)), seed);
        }
    }

    private static void groups(Model model) {
        List<LinkageGroup> groups = List.copyOf(model.groups().values());
        Predicate<LinkageGroup> linked =
                group -> group.loci().size() > 1 && group.transmission().recombines();
        count(
                "sex-linked loci",
                groups.stream()
                        .anyMatch(group -> group.transmission().heterogametic().isPresent()));
        for (Transmission way : Transmission.values()) {
            count(way + " loci", groups.stream().anyMatch(group -> group.transmission() == way));
        }
        count("linked loci", groups.stream().anyMatch(linked));
        count(
                "three linked loci",
                groups.stream().filter(linked).anyMatch(group -> group.loci().size() == 3));
        count(
                "linked sex-linked loci",
                groups.stream()
                        .filter(linked)
                        .anyMatch(group -> group.transmission().heterogametic().isPresent()));
        count(
                "crossover tables",
                groups.stream()
                        .filter(linked)
                        .anyMatch(group -> group.recombination() instanceof Recombination.Crossovers));
        count(
                "fractions that differ by sex",
                groups.stream()
                        .anyMatch(group -> group.recombination() instanceof Recombination.Fractions fractions
                                && !fractions.female().equals(fractions.male())));
        count("map order other than declared order", groups.stream().anyMatch(group -> {
            List<String> declared = new ArrayList<>(model.loci().keySet());
            declared.retainAll(group.loci());
            return !declared.equals(group.loci());
        }));
    }

    private static void loci(Model model) {
        count("sex-influenced dominance", model.loci().values().stream().anyMatch(locus -> locus.dependsOnSex()));
        count(
                "mutation",
                model.loci().values().stream()
                        .anyMatch(locus -> !locus.mutation().isEmpty()));
        count(
                "three alleles",
                model.loci().values().stream().anyMatch(locus -> locus.alleles().size() > 2));
        count("several loci", model.loci().size() > 1);
        count("viability", !model.viability().isEmpty());
        count(
                "lethal expressions",
                model.viability().values().stream().anyMatch(one -> one.birth().isZero()));
        count(
                "viability of one sex",
                model.viability().values().stream().anyMatch(one -> one.sex().isPresent()));
        count(
                "losses after birth",
                model.viability().values().stream()
                        .anyMatch(one -> !one.scored().isOne()));
    }

    private static void rules(Model model) {
        List<TraitRule> rules = List.copyOf(model.rules().values());
        count("chance of any kind", rules.stream().anyMatch(rule -> gives(rule, CaseState.class)));
        count("chances", rules.stream().anyMatch(rule -> gives(rule, CaseState.Chance.class)));
        count("progressions", rules.stream().anyMatch(rule -> gives(rule, CaseState.Progression.class)));
        count("thresholds", rules.stream().anyMatch(rule -> gives(rule, CaseState.Threshold.class)));
        Set<String> progressing = new LinkedHashSet<>();
        rules.stream()
                .filter(rule -> gives(rule, CaseState.Progression.class))
                .forEach(rule -> progressing.add(rule.trait()));
        count(
                "masks that read a progressing trait",
                model.masks().values().stream()
                        .anyMatch(mask -> mask.when().names().stream().anyMatch(progressing::contains)));
        List<Condition> conditions = Stream.concat(
                        rules.stream().flatMap(rule -> rule.cases().stream().map(one -> one.when())),
                        model.masks().values().stream().map(mask -> mask.when()))
                .toList();
        count(
                "conditions on sex",
                conditions.stream().anyMatch(when -> when.names().contains(Sex.VARIABLE)));
        count(
                "conditions on season",
                conditions.stream().anyMatch(when -> when.names().contains(LifeStage.SEASON)));
        count(
                "rules that read a trait of chance",
                rules.stream()
                        .flatMap(rule -> rule.cases().stream())
                        .flatMap(one -> one.when().names().stream())
                        .anyMatch(name -> model.rules().containsKey(name)
                                && gives(model.rules().get(name), CaseState.class)));
    }

    /** Tells whether a trait has a case of some kind other than certain. */
    private static boolean gives(TraitRule rule, Class<? extends CaseState> kind) {
        return rule.allCases().stream()
                .anyMatch(one -> kind.isInstance(one.gives()) && !(one.gives() instanceof CaseState.Certain));
    }

    private static void animals(Model model, Genome genome, long seed) {
        Genotype hob = RandomAnimals.genotype(model, Sex.MALE, seed);
        Genotype jill = RandomAnimals.genotype(model, Sex.FEMALE, seed + 1);
        List<Animal> sires = RandomAnimals.animals(genome, Sex.MALE, hob);
        List<Animal> dams = RandomAnimals.animals(genome, Sex.FEMALE, jill);
        count("parents of unknown phase", sires.size() * dams.size() > 1);
        count(
                "parents of known phase",
                !hob.phase().strands().isEmpty() || !jill.phase().strands().isEmpty());
        Map<String, String> stage = RandomAnimals.plain(RandomAnimals.stage(model, seed));
        List<String> traits = new ArrayList<>(model.visibleTraits());
        count(
                "an animal that may look in several ways",
                Life.looks(genome, dams.get(0), stage, traits).size() > 1);
        Mating mating = new Mating(genome, sires.get(0), dams.get(0));
        Probability share = mating.share("scored");
        count("matings that lose kits", !share.isOne());
        count("matings that lose all kits", share.isZero());
        Parents parents = RandomAnimals.parents(model, genome, Sex.FEMALE, 8, seed);
        assertTrue(!parents.members().isEmpty() && parents.members().size() <= 8, () -> model + ": " + parents);
        count("parents known as a set", parents.members().size() > 1);
        Genotype seen = RandomModels.genotype(model, parents.members().get(0));
        List<Sighting> sightings = RandomAnimals.sightings(model, genome, Sex.FEMALE, seen, seed);
        count("parents looked at twice", sightings.size() > 1);
        Map<Animal, Probability> weighed = Founders.of(
                genome, "female", parents.members(), Map.of(), "even", "conceived", RandomAnimals.plain(sightings));
        assertEquals(
                Probability.ONE,
                weighed.values().stream().reduce(Probability.ZERO, Probability::plus),
                () -> model + ": " + parents);
    }

    private static void count(String feature, boolean present) {
        SEEN.merge(feature, present ? 1 : 0, Integer::sum);
    }

    private static void atLeast(int percent, String feature) {
        int seen = SEEN.get(feature);
        assertTrue(100 * seen >= percent * MODELS, feature + ": " + seen + " of " + MODELS);
    }

    @Test
    void every_feature_is_common_enough(TestReporter reporter) {
        SEEN.forEach((feature, counted) -> reporter.publishEntry(feature, counted + " of " + MODELS));
        atLeast(20, "chance of any kind");
        atLeast(20, "chances");
        atLeast(20, "progressions");
        atLeast(15, "thresholds");
        atLeast(20, "rules that read a trait of chance");
        atLeast(20, "masks that read a progressing trait");
        atLeast(20, "conditions on sex");
        atLeast(10, "conditions on season");
        atLeast(20, "sex-linked loci");
        atLeast(15, "X loci");
        atLeast(15, "Z loci");
        atLeast(5, "Y loci");
        atLeast(5, "W loci");
        atLeast(5, "MATERNAL loci");
        atLeast(20, "linked loci");
        atLeast(10, "linked sex-linked loci");
        atLeast(5, "three linked loci");
        atLeast(10, "crossover tables");
        atLeast(5, "fractions that differ by sex");
        atLeast(20, "map order other than declared order");
        atLeast(20, "sex-influenced dominance");
        atLeast(20, "mutation");
        atLeast(20, "three alleles");
        atLeast(20, "viability");
        atLeast(20, "lethal expressions");
        atLeast(10, "viability of one sex");
        atLeast(10, "losses after birth");
        atLeast(10, "parents of unknown phase");
        atLeast(10, "parents of known phase");
        atLeast(20, "an animal that may look in several ways");
        atLeast(20, "matings that lose kits");
        atLeast(30, "parents known as a set");
        atLeast(30, "parents looked at twice");
    }

    @Test
    void the_same_seed_gives_the_same_model_and_another_another() {
        assertEquals(text(7), text(7));
        assertNotEquals(text(8), text(9));
    }

    private static String text(long seed) {
        Model model = RandomModels.whole(seed);
        return Canonical.text(ModelDocument.of(model)).replace(model.id(), "");
    }

    @Test
    void a_genotype_with_its_phase_and_its_plain_form_are_one() {
        for (long seed = 0; seed < 100; seed++) {
            Model model = RandomModels.whole(seed);
            Genome genome = new Genome(DocumentMaps.of(model));
            for (Sex sex : Sex.values()) {
                Genotype genotype = RandomAnimals.genotype(model, sex, seed);
                assertTrue(genotype.sexes().contains(sex));
                List<Animal> animals = RandomAnimals.animals(genome, sex, genotype);
                for (Animal animal : animals) {
                    Genotype phased = RandomAnimals.genotype(model, genome, animal);
                    assertEquals(genotype.pairs(), phased.pairs());
                    assertEquals(List.of(animal), RandomAnimals.animals(genome, sex, phased));
                }
                boolean known = animals.size() == 1;
                assertEquals(known, genotype.equals(RandomAnimals.genotype(model, genome, animals.get(0))));
            }
        }
    }

    @Test
    void renaming_and_copying_keep_all_that_can_be_counted() {
        for (long seed = 0; seed < 100; seed++) {
            Model model = RandomModels.whole(seed);
            Model copy = Copies.of(model).build();
            Map<String, Object> expected = DocumentMaps.of(model);
            expected.remove("populations");
            assertEquals(expected, DocumentMaps.of(copy));
            Relabelled relabelled = Relabelled.of(model);
            Genome genome = new Genome(DocumentMaps.of(model));
            Genome renamed = new Genome(DocumentMaps.of(relabelled.model()));
            Map<String, String> stage = RandomAnimals.plain(RandomAnimals.stage(model, seed));
            List<String> traits = new ArrayList<>(model.visibleTraits());
            Genotype hob = RandomAnimals.genotype(model, Sex.MALE, seed);
            Genotype jill = RandomAnimals.genotype(model, Sex.FEMALE, seed);
            assertEquals(
                    looks(genome, hob, jill, stage, traits),
                    looks(renamed, relabelled.genotype(hob), relabelled.genotype(jill), stage, traits),
                    () -> model + ": " + hob + " x " + jill);
        }
    }

    private static Map<Map<String, String>, Probability> looks(
            Genome genome, Genotype hob, Genotype jill, Map<String, String> stage, List<String> traits) {
        return Litters.of(genome, known(genome, Sex.MALE, hob), known(genome, Sex.FEMALE, jill), "scored")
                .looks(stage, traits);
    }

    private static Map<Animal, Probability> known(Genome genome, Sex sex, Genotype genotype) {
        return Founders.of(
                genome,
                sex.word(),
                List.of(RandomModels.plain(genotype)),
                RandomAnimals.plain(genotype.phase()),
                "",
                "conceived",
                List.of());
    }
}
