package org.geneticsrules.examples.guide;

import java.io.PrintStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.vocabulary.Conversion;
import org.geneticsrules.vocabulary.Facet;
import org.geneticsrules.vocabulary.Meaning;
import org.geneticsrules.vocabulary.Name;
import org.geneticsrules.vocabulary.Naming;
import org.geneticsrules.vocabulary.Occasion;
import org.geneticsrules.vocabulary.Sense;
import org.geneticsrules.vocabulary.Vocabulary;

/** Two invented regions that call the same coats otherwise. */
final class Names {

    private Names() {}

    /**
     * Runs the sample.
     *
     * @param out where to print
     * @return what it is about
     */
    static Shown run(PrintStream out) {
        // Laid out by hand, one name per line.
        // spotless:off
        // sample
        Catalogue traits = Catalogue.builder("sample.names.traits", "1.0.0")
                .trait("tone", "full", "pale", "white").trait("hue", "black", "reddish").build();
        Vocabulary hills = Vocabulary.builder("sample.names.hills", "1.0.0", traits).region("The hills")
                .facet(Facet.of("colour"))
                .name(Name.of("sandy", "colour").withSense(Sense.of("usual")
                        .withLook("pale", Condition.where("tone", "pale"))
                        .withLook("reddish", Condition.where("hue", "reddish").and("tone", "full"))))
                .build();
        Vocabulary coast = Vocabulary.builder("sample.names.coast", "1.0.0", traits).region("The coast")
                .facet(Facet.of("colour"))
                .name(Name.of("dun", "colour").withSense(Sense.of("usual").withLook("pale", Condition.where("tone", "pale"))))
                .name(Name.of("fox", "colour").withSense(Sense.of("usual").withLook("red", Condition.where("hue", "reddish"))))
                .build();
        Phenotype seen = Phenotype.parse("tone: pale, hue: black");
        for (Vocabulary region : List.of(hills, coast)) {
            Naming.of(region, seen, Occasion.unstated()).facet("colour").narrowest()
                    .forEach(one -> out.println(region.region().orElseThrow() + ": " + one.name().word()));
        }
        Meaning said = Meaning.of(hills, "Sandy", Occasion.unstated().on(LocalDate.of(1998, 5, 30)));
        out.println("sandy says: " + said.set());
        Conversion.of(List.of(said), coast, Optional.empty()).candidates()
                .forEach(one -> out.println(one.names() + " is " + one.match().word()
                        + "; means besides: " + one.alsoMeans() + "; leaves out: " + one.leavesOut()));
        // end
        // spotless:on
        return new Shown(hills.toDocument(), traits);
    }
}
