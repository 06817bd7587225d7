package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Viability;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Small models of one coat, dark or light, and litters to hold them against. */
public final class Coats {

    /** The traits. */
    public static final Catalogue TRAITS =
            Catalogue.builder("coats", "1").trait("coat", "dark", "light").build();

    public static final Phenotype DARK = Phenotype.of("coat", "dark");
    public static final Phenotype LIGHT = Phenotype.of("coat", "light");

    private Coats() {}

    /** Light is recessive. */
    public static Model recessive() {
        return recessive("recessive", Probability.of(1, 2));
    }

    /** Light is recessive, and its allele of some frequency. */
    public static Model recessive(String id, Probability light) {
        return one(id, "D", light).build();
    }

    /** Light is dominant. */
    public static Model dominant() {
        return one("dominant", "d", Probability.of(1, 2)).build();
    }

    /** Dark is dominant, and those with two doses of it are never born. */
    public static Model lethal() {
        return Model.builder("lethal", "1", TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .shows("D", "two doses")
                                .shows("D/d", "one dose")
                                .shows("d", "none"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "none"), "light").otherwise("dark"))
                .viability(new Viability(
                        "two doses",
                        "A",
                        Set.of("two doses"),
                        Optional.empty(),
                        Probability.ZERO,
                        Probability.ONE,
                        Optional.empty()))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2)).frequency("A", "d", Probability.of(1, 2)))
                .build();
    }

    /** Light are those that are light at either of two loci. */
    public static Model twoLoci() {
        ModelBuilder builder = Model.builder("two loci", "1", TRAITS);
        for (String locus : List.of("A", "B")) {
            builder.locus(
                    locus,
                    at -> at.alleles(locus.equals("A") ? "D" : "E", locus.equals("A") ? "d" : "e")
                            .dominant(locus.equals("A") ? "D" : "E", locus.equals("A") ? "d" : "e")
                            .shows(locus.equals("A") ? "D" : "E", "dark")
                            .shows(locus.equals("A") ? "d" : "e", "light"));
        }
        return builder.trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "dark").and("B", "dark"), "dark")
                                .otherwise("light"))
                .population(
                        "even",
                        one -> one.frequency("A", "D", Probability.of(1, 2))
                                .frequency("A", "d", Probability.of(1, 2))
                                .frequency("B", "E", Probability.of(1, 2))
                                .frequency("B", "e", Probability.of(1, 2)))
                .build();
    }

    private static ModelBuilder one(String id, String dominant, Probability light) {
        return Model.builder(id, "1", TRAITS)
                .locus(
                        "A",
                        at -> at.alleles("D", "d")
                                .dominant(dominant, dominant.equals("D") ? "d" : "D")
                                .shows("D", "dark")
                                .shows("d", "light"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "light"), "light")
                                .otherwise("dark"))
                .population(
                        "even",
                        population -> population
                                .frequency("A", "D", light.complement())
                                .frequency("A", "d", light));
    }

    public static Individual seen(String id, Phenotype look) {
        return Individual.of(id).with(Observation.of(LifeStage.unstated(), look));
    }

    /** Two tested carriers. */
    public static PedigreeBuilder carriers(PedigreeBuilder builder, String suffix) {
        return builder.add(tested("sire" + suffix, Sex.MALE)).add(tested("dam" + suffix, Sex.FEMALE));
    }

    private static Individual tested(String id, Sex sex) {
        return Individual.of(id, sex).with(new GenotypeTest(Optional.empty(), "A", Set.of("D/d"), Probability.ZERO));
    }

    /** A litter of so many dark and light kits. */
    public static PedigreeBuilder litter(
            PedigreeBuilder builder, String id, String suffix, int dark, int light, Ascertainment how) {
        List<String> kits = new ArrayList<>();
        for (int k = 0; k < dark + light; k++) {
            String kit = id + "." + k;
            kits.add(kit);
            builder.add(seen(kit, k < dark ? DARK : LIGHT));
        }
        return builder.add(Litter.of(id, "dam" + suffix, "sire" + suffix, kits.toArray(String[]::new))
                .with(how));
    }

    /** One litter of two tested carriers, recorded whatever it showed. */
    public static Pedigree ofCarriers(int dark, int light) {
        return litter(
                        carriers(Pedigree.builder("carriers", "1"), ""),
                        "litter",
                        "",
                        dark,
                        light,
                        Ascertainment.complete())
                .build();
    }
}
