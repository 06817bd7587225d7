package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.junit.jupiter.api.Test;

/** At least one in a litter is reckoned by itself and agrees with the counts; the model is invented. */
@Once
class AtLeastOneTest {

    private static final Phenotype PINK = Phenotype.of("eye", "pink");
    private static final Phenotype BOTH = Phenotype.parse("eye: pink, tail: short");

    private static Model model(boolean mutates, boolean linked) {
        var builder = Model.builder(
                        "invented.model",
                        "1.0.0",
                        Catalogue.builder("invented.traits", "1.0.0")
                                .trait("eye", "brown", "pink")
                                .trait("tail", "long", "short")
                                .build())
                .locus("C", locus -> {
                    locus.alleles("C", "c")
                            .dominant("C", "c")
                            .shows("C", "pigment")
                            .shows("c", "albino");
                    if (mutates) {
                        locus.mutation("C", "c", Probability.of(BigInteger.valueOf(7), BigInteger.TEN.pow(12)));
                    }
                })
                .locus(
                        "T",
                        locus -> locus.alleles("T", "t")
                                .dominant("T", "t")
                                .shows("T", "long")
                                .shows("t", "short"))
                .trait(
                        "eye",
                        eye -> eye.when(Condition.where("C", "albino"), "pink").otherwise("brown"))
                .trait(
                        "tail",
                        tail -> tail.when(Condition.where("T", "short"), "short")
                                .otherwise("long"));
        if (linked) {
            builder.group(LinkageGroup.autosomal("g", List.of("C", "T"), List.of(Probability.of(1, 10))));
        }
        return builder.build();
    }

    private static Cross carriers(Model model) {
        Genotype carrier = Genotype.parse(model, "C/c T/t");
        return Cross.of(model, carrier, carrier);
    }

    /** Calculated: 1 - (3/4)^8 = 58975/65536, the albino among eight kits of two carriers. */
    @Test
    void among_eight_kits_of_two_carriers() {
        assertEquals(Probability.of(58975, 65536), carriers(model(false, false)).atLeastOne(PINK, 8));
        assertEquals(Probability.ZERO, carriers(model(false, false)).atLeastOne(PINK, 0));
    }

    @Test
    void it_is_what_the_counts_leave() {
        for (boolean mutates : new boolean[] {false, true}) {
            for (boolean linked : new boolean[] {false, true}) {
                Cross cross = carriers(model(mutates, linked));
                for (Phenotype look : List.of(PINK, BOTH)) {
                    for (int kits : new int[] {0, 1, 7}) {
                        assertEquals(
                                cross.count(look, kits).probability(0).complement(),
                                cross.atLeastOne(look, kits),
                                look + " " + kits + " " + mutates + " " + linked);
                    }
                }
            }
        }
    }

    /** The exact fraction has a thousand powers of a denominator of 25 digits; it is taken once, and not for each count. */
    @Test
    void among_the_most_kits_with_new_mutation_in_the_model() {
        Cross cross = carriers(model(true, false));
        Probability one = cross.probability(PINK);
        assertEquals(one.complement().pow(1000).complement(), cross.atLeastOne(PINK, 1000));
        assertTrue(one.denominator().bitLength() > 80, one.toString());
    }
}
