package org.geneticsrules.expression;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.testing.BruteForce;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** The interpreter, the diagram and the brute-force reading of the document agree, for any model and genotype. */
@Once
class CompiledModelLaws {

    private static final int GENOTYPES_PER_MODEL = 20;

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models();
    }

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 300)
    void interpreter_agrees_with_brute_force(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        interpreterAgrees(model, seed);
    }

    @Property(tries = 300)
    void diagram_agrees_with_brute_force(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        diagramAgrees(model, seed);
    }

    @Property(tries = 200)
    void genotypes_behind_a_look_are_those_that_show_it(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        showingAgrees(model, seed);
    }

    @Property(tries = 200)
    void a_locus_that_is_not_read_makes_no_difference(@ForAll("models") Model model, @ForAll("seeds") long seed) {
        unreadLociDoNotMatter(model, seed);
    }

    static void interpreterAgrees(Model model, long seed) {
        CompiledModel compiled = CompiledModel.of(model);
        Map<String, Object> document = DocumentMaps.of(model);
        List<String> traits = List.copyOf(model.visibleTraits());
        for (Genotype genotype : genotypes(model, seed)) {
            Expressed expressed = compiled.express(genotype, traits);
            Map<String, String> plain = RandomModels.plain(genotype);
            assertEquals(
                    BruteForce.phenotype(document, plain, traits),
                    expressed.phenotype().asMap(),
                    () -> model + " " + genotype);
            for (String trait : traits) {
                assertEquals(
                        BruteForce.own(document, plain, trait),
                        expressed.traits().get(trait).own(),
                        () -> model + " " + genotype + " " + trait);
            }
        }
    }

    static void diagramAgrees(Model model, long seed) {
        CompiledModel compiled = CompiledModel.of(model);
        Map<String, Object> document = DocumentMaps.of(model);
        List<String> traits = subset(List.copyOf(model.visibleTraits()), seed);
        Diagram<Phenotype> diagram = compiled.diagram(traits);
        for (Genotype genotype : genotypes(model, seed)) {
            List<Phenotype> reached = new ArrayList<>();
            diagram.paths((outcome, box) -> {
                if (box.holds(locus -> expression(model, genotype, locus))) {
                    reached.add(diagram.outcomes().get(outcome));
                }
                return true;
            });
            Map<String, String> expected = BruteForce.phenotype(document, RandomModels.plain(genotype), traits);
            assertEquals(
                    List.of(expected), reached.stream().map(Phenotype::asMap).toList(), () -> model + " " + genotype);
            LocusWeights[] weights = diagram.loci().stream()
                    .map(locus -> LocusWeights.of(certain(model, genotype, locus)))
                    .toArray(LocusWeights[]::new);
            Distribution<Phenotype> weighed = diagram.distribution(weights);
            assertEquals(
                    List.of(expected),
                    weighed.outcomes().stream().map(Phenotype::asMap).toList(),
                    () -> model + " " + genotype);
        }
    }

    static void showingAgrees(Model model, long seed) {
        CompiledModel compiled = CompiledModel.of(model);
        Map<String, Object> document = DocumentMaps.of(model);
        List<String> traits = subset(List.copyOf(model.visibleTraits()), seed);
        List<Genotype> genotypes = genotypes(model, seed);
        Phenotype look = compiled.express(genotypes.get(0), traits).phenotype();
        GenotypeSet behind = compiled.showing(look);
        for (Genotype genotype : genotypes) {
            Map<String, String> seen =
                    BruteForce.phenotype(document, RandomModels.plain(genotype), List.copyOf(look.traits()));
            boolean agrees = look.asMap().entrySet().containsAll(seen.entrySet());
            assertEquals(agrees, behind.contains(genotype), () -> model + " " + look + " " + genotype);
        }
    }

    static void unreadLociDoNotMatter(Model model, long seed) {
        CompiledModel compiled = CompiledModel.of(model);
        Map<String, Object> document = DocumentMaps.of(model);
        List<String> traits = subset(List.copyOf(model.visibleTraits()), seed);
        Genotype genotype = genotypes(model, seed).get(0);
        Map<String, String> expected = BruteForce.phenotype(document, RandomModels.plain(genotype), traits);
        for (String locus : model.loci().keySet()) {
            if (!compiled.lociRead(traits).contains(locus)) {
                for (AllelePair pair : model.locus(locus).pairs()) {
                    Map<String, String> changed = RandomModels.plain(genotype.with(pair));
                    assertEquals(expected, BruteForce.phenotype(document, changed, traits));
                }
            }
        }
        Genotype needed = genotype.restrictedTo(compiled.lociRead(traits));
        assertEquals(expected, compiled.express(needed, traits).phenotype().asMap());
    }

    private static List<Genotype> genotypes(Model model, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Genotype> genotypes = new ArrayList<>();
        for (int i = 0; i < GENOTYPES_PER_MODEL; i++) {
            genotypes.add(RandomModels.genotype(model, random.nextLong()));
        }
        return genotypes;
    }

    private static List<String> subset(List<String> traits, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<String> chosen =
                traits.stream().filter(trait -> random.nextBoolean()).toList();
        return chosen.isEmpty() ? traits.subList(0, 1) : chosen;
    }

    private static String expression(Model model, Genotype genotype, String locus) {
        return model.locus(locus).expression(genotype.pair(locus).orElseThrow(), Sex.FEMALE);
    }

    private static long[] certain(Model model, Genotype genotype, String locus) {
        long[] weights = new long[model.locus(locus).expressions().size()];
        weights[model.locus(locus).expressions().indexOf(expression(model, genotype, locus))] = 1;
        return weights;
    }
}
