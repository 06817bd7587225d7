package org.geneticsrules.examples.guide;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.ferret.FerretProvider;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.inference.LitterLikelihood;
import org.geneticsrules.json.Documents;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.spi.Registry;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;

/**
 * A litter as it may stand in a kennel's book, for the pages about the ferret models: what was recorded of its parents and of its kits.
 *
 * @param parents the sire, then the dam
 * @param kits the kits, each with its looks
 */
record KitRecords(List<Individual> parents, List<Individual> kits) {

    private static final Registry FERRETS = Registry.of(List.of(new FerretProvider()));

    private static final Map<String, CompiledModel> COMPILED = new ConcurrentHashMap<>();

    private static final String OWNER = "geneticsrules.ferret.";

    /** A ferret model by the last part of its id; a patch stands for the model of common practice under it. */
    static Model model(String name) {
        Model common = FERRETS.model(OWNER + "common-practice");
        return FERRETS.patches(common).stream()
                .filter(patch -> patch.id().equals(OWNER + name))
                .findFirst()
                .map(patch -> Documents.reader().apply(common, List.of(patch)))
                .orElseGet(() -> FERRETS.model(OWNER + name));
    }

    /** A genotype of which the loci of the reference coat are left out. */
    static Genotype genotype(Model model, String text) {
        return Genotype.of(
                model,
                GenotypeSet.parse(model, text, OmittedLoci.WILD_TYPE).boxes().get(0).values().stream()
                        .map(pairs -> pairs.get(0))
                        .toList());
    }

    /** A litter of parents of whom each was recorded as stated: {@code moult 2 | dilution: full}, or a DNA test, {@code M = M/m}. */
    static KitRecords of(List<String> sire, List<String> dam) {
        return new KitRecords(List.of(recorded(sire), recorded(dam)), List.of());
    }

    /** The litter with more kits of one look, each recorded at every stage stated. */
    KitRecords with(int count, String... records) {
        List<Individual> more = new ArrayList<>(kits);
        more.addAll(Collections.nCopies(count, recorded(List.of(records))));
        return new KitRecords(parents, more);
    }

    private static Individual recorded(List<String> records) {
        Individual one = Individual.of("one");
        for (String record : records) {
            if (record.contains(" = ")) {
                String[] test = record.split(" = ", 2);
                one = one.with(new GenotypeTest(Optional.empty(), test[0], Set.of(test[1]), Probability.ZERO));
            } else {
                String[] look = record.split(" \\| ", 2);
                one = one.with(Observation.of(LifeStage.parse(look[0]), Phenotype.parse(look[1])));
            }
        }
        return one;
    }

    /** The natural logarithm of the chance of all these records, the parents being founders of a population. */
    double log(String model, String population) {
        LitterLikelihood litters = Inference.of(
                        COMPILED.computeIfAbsent(model, name -> CompiledModel.of(model(name))),
                        Pedigree.builder("invented", "1").build())
                .from(population)
                .litters();
        return litters.log(
                litters.sire(parents.get(0)),
                litters.dam(parents.get(1)),
                kits.stream().map(litters::kit).toList());
    }

    /** The exact chance of the kits' looks, one stage each, if the parents carry what is stated. */
    Probability exactly(String name, String sire, String dam) {
        Model model = model(name);
        Cross cross = Cross.of(model, genotype(model, sire), genotype(model, dam));
        Probability chance = Probability.ONE;
        for (Individual kit : kits) {
            Observation seen = kit.observations().get(0);
            View view = View.of(seen.traits()).at(seen.stage());
            chance = chance.times(
                    cross.phenotypes(view).probability(seen.looks().iterator().next()));
        }
        return chance;
    }

    /** The likelihood ratio of two models by these records, in words, with founders of each population where that matters. */
    String ratio(String one, String other) {
        String few = ratio(one, other, "few carriers");
        String many = ratio(one, other, "many carriers");
        return few.equals(many) ? few : "few carriers " + few + ", many carriers " + many;
    }

    private String ratio(String one, String other, String population) {
        double difference = log(one, population) - log(other, population);
        if (Double.isNaN(difference)) {
            return "impossible under both";
        }
        if (Double.isInfinite(difference)) {
            return "impossible under " + (difference < 0 ? one : other);
        }
        double times = Math.exp(Math.abs(difference));
        return times < 1.00005
                ? "1 to 1"
                : String.format(
                        Locale.ROOT,
                        times < 1000 ? "%.2f to 1 for %s" : "%.0f to 1 for %s",
                        times,
                        difference > 0 ? one : other);
    }
}
