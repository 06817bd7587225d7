package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Transmission;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;

/** Which statements about losses and linkage an answer rests on, case by case: locus A is asked for, L is not, at which some animals die. */
class CitationsTest {

    private static final Probability HALF = Probability.of(1, 2);
    private static final View COAT = View.of(List.of("coat"));
    private static final String WEAK = "/viability/weak";

    private static Model model(Consumer<ModelBuilder> more) {
        Catalogue catalogue = Catalogue.builder("citations.traits", "1")
                .trait("coat", "coloured", "white")
                .trait("size", "large", "small")
                .build();
        ModelBuilder model = Model.builder("citations", "1", catalogue)
                .locus(
                        "A",
                        locus -> locus.alleles("A", "a")
                                .dominant("A", "a")
                                .shows("A", "full")
                                .shows("a", "none"))
                .locus(
                        "L",
                        locus -> locus.alleles("L", "l")
                                .shows("L", "sound")
                                .shows("L/l", "between")
                                .shows("l", "weak"))
                .trait(
                        "coat",
                        rule -> rule.when(Condition.where("A", "none"), "white").otherwise("coloured"))
                .trait(
                        "size",
                        rule -> rule.when(Condition.where("L", "weak"), "small").otherwise("large"))
                .population(
                        "even",
                        population -> population
                                .frequency("A", "A", HALF)
                                .frequency("A", "a", HALF)
                                .frequency("L", "L", HALF)
                                .frequency("L", "l", HALF));
        more.accept(model);
        return model.build();
    }

    private static Model weak(Optional<Sex> sex, Consumer<ModelBuilder> more) {
        return model(builder -> {
            builder.viability(new Viability("weak", "L", Set.of("weak"), sex, HALF, Probability.ONE, Optional.empty()));
            more.accept(builder);
        });
    }

    private static Parent known(Model model, String genotype) {
        return Parent.of(model, Genotype.parse(model, genotype));
    }

    private static Parent open(Model model, String genotype) {
        return Parent.among(GenotypeSet.parse(model, genotype, OmittedLoci.UNKNOWN))
                .from(model.populations().get("even"));
    }

    private static Parent either(Model model, String one, String other) {
        return Parent.among(GenotypeSet.of(model, Genotype.parse(model, one))
                        .or(GenotypeSet.of(model, Genotype.parse(model, other))))
                .from(model.populations().get("even"));
    }

    private static Set<String> cited(Model model, View view, Parent sire, Parent dam, String start) {
        Set<String> found = new TreeSet<>(UncertainCross.of(CompiledModel.of(model), sire, dam)
                .explain(view)
                .orElseThrow()
                .statements());
        found.removeIf(pointer -> !pointer.startsWith(start));
        return found;
    }

    @Test
    void a_loss_elsewhere_does_not_bear_on_what_is_asked() {
        Model model = weak(Optional.empty(), more -> {});
        Parent carrier = known(model, "A/a L/l");
        assertEquals(Set.of(), cited(model, COAT, carrier, carrier, "/viability"));
        assertEquals(Set.of(), cited(model, COAT, carrier, open(model, "A/a"), "/viability"));
    }

    @Test
    void a_loss_where_it_is_asked_does_if_kits_or_parents_may_have_it() {
        Model model = weak(Optional.empty(), more -> {});
        View size = View.of(List.of("size"));
        Parent carrier = known(model, "A/a L/l");
        Parent sound = known(model, "A/a L/L");
        assertEquals(Set.of(WEAK), cited(model, size, carrier, carrier, "/viability"));
        assertEquals(Set.of(), cited(model, size, carrier, sound, "/viability"));
        assertEquals(Set.of(), cited(model, size.among(Census.CONCEIVED), carrier, carrier, "/viability"));
        // of the dams there may be the weak have died in part
        assertEquals(Set.of(WEAK), cited(model, size.among(Census.CONCEIVED), sound, open(model, "A/a"), "/viability"));
        assertEquals(
                Set.of(),
                cited(model, size.among(Census.CONCEIVED), sound, either(model, "A/a L/L", "A/A L/l"), "/viability"));
    }

    @Test
    void a_loss_weighs_what_else_a_parent_may_be() {
        Model model = weak(Optional.empty(), more -> {});
        Parent carrier = known(model, "A/a L/L");
        assertEquals(Set.of(WEAK), cited(model, COAT, carrier, either(model, "A/a L/L", "a/a l/l"), "/viability"));
        assertEquals(Set.of(), cited(model, COAT, carrier, either(model, "A/a L/L", "a/a L/l"), "/viability"));
        assertEquals(Set.of(), cited(model, COAT, carrier, either(model, "A/a l/l", "a/a l/l"), "/viability"));
    }

    @Test
    void a_loss_of_sons_does_not_weigh_dams() {
        Model model = weak(Optional.of(Sex.MALE), more -> {});
        Parent carrier = known(model, "A/a L/L");
        Parent either = either(model, "A/a L/L", "a/a l/l");
        assertEquals(Set.of(), cited(model, COAT.among(Census.CONCEIVED), carrier, either, "/viability"));
        assertEquals(Set.of(WEAK), cited(model, COAT.among(Census.CONCEIVED), either, carrier, "/viability"));
    }

    @Test
    void linkage_bears_on_what_is_asked_where_a_parent_is_heterozygous_twice() {
        LinkageGroup together = LinkageGroup.autosomal("one", List.of("A", "L"), List.of(Probability.of(1, 10)));
        Model model = model(more -> more.group(together));
        View both = View.of(List.of("coat", "size"));
        Parent twice = known(model, "[A L]/[a l]");
        Parent once = known(model, "A/a l/l");
        Parent none = known(model, "a/a l/l");
        assertEquals(Set.of("/groups/one"), cited(model, both, twice, none, "/groups"));
        assertEquals(Set.of("/groups/one"), cited(model, both, none, twice, "/groups"));
        assertEquals(Set.of(), cited(model, both, once, none, "/groups"));
        assertEquals(Set.of(), cited(model, COAT, twice, none, "/groups"));
    }

    @Test
    void a_sex_chromosome_always_bears_on_what_is_asked_there() {
        Model model = model(more -> more.group(LinkageGroup.single(Transmission.X, "A")));
        Parent dam = known(model, "A/A L/L");
        Parent sire = known(model, "A/Y L/L");
        assertEquals(Set.of("/groups/A"), cited(model, COAT, sire, dam, "/groups"));
        assertEquals(Set.of(), cited(model, View.of(List.of("size")), sire, dam, "/groups"));
    }

    @Test
    void mutation_bears_on_what_is_asked_at_its_locus_alone() {
        Catalogue catalogue = Catalogue.builder("mutable.traits", "1")
                .trait("coat", "coloured", "white")
                .trait("size", "large", "small")
                .build();
        ModelBuilder builder = Model.builder("mutable", "1", catalogue);
        for (String name : List.of("A", "L")) {
            String other = name.equals("A") ? "a" : "l";
            builder.locus(
                            name,
                            locus -> locus.alleles(name, other)
                                    .dominant(name, other)
                                    .shows(name, "on")
                                    .shows(other, "off")
                                    .mutation(name, other, Probability.of(1, 1000)))
                    .trait(
                            name.equals("A") ? "coat" : "size",
                            rule -> rule.when(Condition.where(name, "off"), name.equals("A") ? "white" : "small")
                                    .otherwise(name.equals("A") ? "coloured" : "large"));
        }
        Model model = builder.build();
        Parent both = known(model, "A/A L/L");
        assertEquals(Set.of("/loci/A/mutation/A/a"), cited(model, COAT, both, both, "/loci/A/mutation"));
        assertEquals(Set.of(), cited(model, COAT, both, both, "/loci/L"));
    }

    /** How the parents that were weighed were told apart is cited with the loss that weighed them. */
    @Test
    void the_dominance_of_a_locus_that_weighs_parents_is_cited() {
        Model model = weak(Optional.empty(), more -> {});
        Parent carrier = known(model, "A/a L/L");
        assertEquals(
                Set.of("/loci/L/dominance/shows/L", "/loci/L/dominance/shows/l"),
                cited(model, COAT, carrier, either(model, "A/a L/L", "a/a l/l"), "/loci/L"));
        assertEquals(Set.of(), cited(model, COAT, carrier, either(model, "A/a L/L", "a/a L/L"), "/loci/L"));
    }
}
