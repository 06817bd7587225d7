package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

class AscertainmentTest {

    private static final Sighting PINK = Sighting.of(Phenotype.of("eye", "pink"));
    private static final Probability HALF = Probability.of(1, 2);

    private static Litter litter(Ascertainment how) {
        return Litter.of("spring", "jill", "hob", "kit 1", "kit 2").with(how);
    }

    private static PedigreeBuilder family(Litter litter) {
        return Pedigree.builder("family", "1")
                .add(Individual.of("jill", Sex.FEMALE))
                .add(Individual.of("hob", Sex.MALE))
                .add(Individual.of("kit 1"))
                .add(Individual.of("kit 2"))
                .add(litter);
    }

    private static String problem(Litter litter) {
        ProblemsException thrown =
                assertThrows(ProblemsException.class, () -> family(litter).build());
        Problem problem = thrown.problems().get(0);
        return problem.code() + " " + problem.pointer() + ": " + problem.message();
    }

    @Test
    void a_sign_is_a_look_in_plain_words() {
        Phenotype nothing = Phenotype.unspecified();
        Phenotype odd = Phenotype.of("eye", "pink: pale");
        assertThrows(IllegalArgumentException.class, () -> Ascertainment.atLeastOne(nothing));
        assertThrows(IllegalArgumentException.class, () -> Ascertainment.atLeastOne(odd));
        assertThrows(IllegalArgumentException.class, () -> new Ascertainment.ParentsChosen(PINK.in("a;b")));
        assertThrows(
                IllegalArgumentException.class,
                () -> new Ascertainment.Probands(PINK, Probability.ZERO, OptionalInt.empty()));
        assertThrows(IllegalArgumentException.class, () -> new Ascertainment.Probands(PINK, HALF, OptionalInt.of(0)));
    }

    @Test
    void each_is_told_in_words() {
        assertEquals("not stated", Ascertainment.unknown().toString());
        assertEquals("complete", Ascertainment.complete().toString());
        assertEquals(
                "at least one: eye: pink", Ascertainment.atLeastOne(PINK.look()).toString());
        assertEquals(
                "probands 1/2, 2 of them: eye: pink (in dusk)",
                new Ascertainment.Probands(PINK.in("dusk"), HALF, OptionalInt.of(2)).toString());
        assertEquals("parents chosen: eye: pink", new Ascertainment.ParentsChosen(PINK).toString());
    }

    @Test
    void each_says_what_brought_the_litter_to_notice() {
        assertEquals(Optional.empty(), Ascertainment.unknown().noticedBy());
        assertEquals(Optional.empty(), Ascertainment.complete().noticedBy());
        Sighting dusk = PINK.in("dusk");
        assertEquals(Optional.of(dusk), new Ascertainment.AtLeastOne(dusk).noticedBy());
        assertEquals(Optional.of(dusk), new Ascertainment.Probands(dusk, HALF, OptionalInt.empty()).noticedBy());
        assertEquals(Optional.of(dusk), new Ascertainment.ParentsChosen(dusk).noticedBy());
    }

    @Test
    void copies_of_a_litter_keep_it() {
        Ascertainment how = Ascertainment.atLeastOne(PINK.look());
        Litter changed =
                litter(how).bornOn(LocalDate.of(2020, 5, 1)).counting(3, 2).raisedBy("jill 2");
        assertEquals(how, changed.with(Paternity.unknown()).ascertainment());
    }

    @Test
    void more_probands_than_kits_are_a_problem() {
        Litter two = litter(new Ascertainment.Probands(PINK, HALF, OptionalInt.of(2)));
        assertEquals(two, family(two).build().litters().get("spring"));
        assertEquals(
                two.counting(2, 2), family(two.counting(2, 2)).build().litters().get("spring"));
        Litter three = litter(new Ascertainment.Probands(PINK, HALF, OptionalInt.of(3)));
        assertEquals(
                "counts-differ /litters/spring/ascertainment/probands/count: "
                        + "3 kits brought the litter to notice, but 2 listed",
                problem(three));
        assertEquals(
                "counts-differ /litters/spring/ascertainment/probands/count: "
                        + "3 kits brought the litter to notice, but 2 scored",
                problem(three.counting(5, 2)));
        assertEquals(
                "counts-differ /litters/spring/ascertainment/atLeastOne: "
                        + "a kit brought the litter to notice, but 0 scored",
                problem(Litter.of("spring", "jill", "hob").counting(2, 0).with(Ascertainment.atLeastOne(PINK.look()))));
        Litter earlier = Litter.of("spring", "jill", "hob").counting(0, 0).with(new Ascertainment.ParentsChosen(PINK));
        assertEquals(earlier, family(earlier).build().litters().get("spring"), "the earlier kit is of another litter");
    }

    @Test
    void a_model_that_does_not_know_the_sign_says_so() {
        Catalogue catalogue = Catalogue.builder("traits", "1")
                .trait("eye", "dark", "pink")
                .seasons("summer", "winter")
                .lights("daylight")
                .build();
        Model model = Model.builder("model", "1", catalogue)
                .locus("C", locus -> locus.alleles("C").shows("C", "full"))
                .notModelled("eye", "Not the subject.")
                .build();
        Pedigree sound = family(litter(Ascertainment.atLeastOne(PINK.look()))).build();
        assertEquals(List.of(), sound.problemsUnder(model));
        Sighting odd = new Sighting(LifeStage.unstated().in("autumn"), Phenotype.parse("eye: pnik, hue: black"))
                .in("daylihgt");
        List<Problem> problems =
                family(litter(new Ascertainment.ParentsChosen(odd))).build().problemsUnder(model);
        String at = " /litters/spring/ascertainment/parentsChosen/";
        assertEquals(
                List.of(
                        "unknown-season" + at + "stage/season",
                        "unknown-light" + at + "light",
                        "unknown-state" + at + "look/eye",
                        "unknown-trait" + at + "look/hue"),
                problems.stream().map(one -> one.code() + " " + one.pointer()).toList());
        assertEquals(Optional.of("pink"), problems.get(2).nearest());
    }

    @Test
    void a_correction_holds_it_before_and_after() {
        Pedigree before = family(litter(Ascertainment.unknown())).build();
        Change change = before.change(litter(Ascertainment.complete()));
        Pedigree after = before.corrected(new Correction(
                LocalDate.of(2020, 6, 1), Optional.empty(), "the keeper writes down every litter", List.of(change)));
        assertEquals(Ascertainment.complete(), after.litters().get("spring").ascertainment());
        assertEquals(before, after.beforeLastCorrection());
    }
}
