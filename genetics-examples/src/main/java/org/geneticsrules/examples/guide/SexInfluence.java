package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.util.List;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/** One allele whose dominance differs by sex, and a trait that only one sex can show. */
final class SexInfluence {

    private SexInfluence() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one statement of the model per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.horns.traits", "1.0.0")
                .trait("horns", "horned", "hornless").trait("feathering", "cock-feathered", "hen-feathered").build();
        Model model = Model.builder("sample.horns", "1.0.0", traits)
                .locus("H", h -> h.alleles("H", "h").expressions("horned", "hornless")
                        .in(Sex.MALE, male -> male.dominant("H", "h").shows("H", "horned").shows("h", "hornless"))
                        .in(Sex.FEMALE, female -> female.dominant("h", "H").shows("H", "horned").shows("h", "hornless")))
                .locus("F", f -> f.alleles("F", "f").dominant("F", "f").shows("F", "hen").shows("f", "cock"))
                .trait("horns", horns -> horns.when(Condition.where("H", "horned"), "horned").otherwise("hornless"))
                .trait("feathering", feathering -> feathering
                        .when(Condition.where("sex", "male").and("F", "cock"), "cock-feathered").otherwise("hen-feathered"))
                .build();
        Genotype both = Genotype.parse(model, "H/h F/f");
        Cross cross = Cross.of(model, both, both);
        for (String trait : List.of("horns", "feathering")) {
            cross.phenotypes(View.of(List.of("sex", trait))).asMap().forEach((look, chance) ->
                    out.println(chance + " " + look));
        }
        // end
        // spotless:on
        return Shown.of(model);
    }
}
