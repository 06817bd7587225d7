package org.geneticsrules.answer.described;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.described.Description.Fit;
import org.geneticsrules.answer.described.Description.Reading;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.testing.DocumentMaps;
import org.geneticsrules.testing.RandomAnimals;
import org.geneticsrules.testing.RandomModels;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Seen;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.junit.jupiter.api.Test;

/** Whether all that was seen can be of one animal, against every life of every animal. */
class DescriptionsLaws {

    /** Models with more genotypes of a sex are left out, since every one of them lives every life. */
    private static final int MOST_GENOTYPES = 200;

    private record Case(Answers answers, Genome genome, DescribeQuestion question) {}

    @Property(tries = 60)
    void it_fits_exactly_if_some_animal_shows_all_of_it(@ForAll long seed) {
        fitsLikeTheTwin(seed);
    }

    /** Seeds that reach each kind, looked up, so that the law above cannot pass for want of cases. */
    @Test
    void both_kinds_of_verdict_are_met_and_contradictions_of_one_reading_and_of_several() {
        int together = 0;
        int one = 0;
        int several = 0;
        int unjustly = 0;
        for (long seed = 0; seed < 150; seed++) {
            Optional<Description> found = fitsLikeTheTwin(seed);
            if (found.isPresent()) {
                together += found.get().fit() == Fit.ONE_ANIMAL ? 1 : 0;
                one += found.get().apart().size() == 1 ? 1 : 0;
                several += found.get().apart().size() > 1 ? 1 : 0;
                unjustly += found.get().fit() == Fit.NOT_FOUND_OUT ? 1 : 0;
            }
        }
        assertTrue(together >= 10 && one + several >= 10 && several >= 5, together + " " + one + " " + several);
        assertEquals(0, unjustly);
    }

    private static Optional<Description> fitsLikeTheTwin(long seed) {
        Optional<Case> drawn = draw(seed);
        if (drawn.isEmpty()) {
            return Optional.empty();
        }
        Case one = drawn.get();
        Description found =
                Descriptions.of(one.answers()).describe(one.question()).description();
        List<Reading> ruled = found.readings().stream()
                .filter(reading ->
                        reading.tooEarly().isEmpty() && reading.unruled().isEmpty())
                .toList();
        boolean together = lives(one, ruled);
        assertEquals(
                ruled.isEmpty() ? Fit.NO_CLAIM : together ? Fit.ONE_ANIMAL : Fit.NOT_ONE_ANIMAL,
                found.fit(),
                () -> "" + one.question());
        assertEquals(together, found.apart().isEmpty());
        if (!together) {
            assertFalse(lives(one, found.apart()));
            for (Reading reading : found.apart()) {
                List<Reading> others = new ArrayList<>(found.apart());
                others.remove(reading);
                assertTrue(others.isEmpty() || lives(one, others), () -> reading + " is not needed");
            }
        }
        return Optional.of(found);
    }

    /** Looks of one animal of a random model, or of two taken for one. */
    private static Optional<Case> draw(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Model model = RandomModels.whole(random.nextLong());
        Genome genome = new Genome(DocumentMaps.of(model));
        Sex sex = random.nextBoolean() ? Sex.FEMALE : Sex.MALE;
        if (genome.genotypes(sex.word()).size() > MOST_GENOTYPES) {
            return Optional.empty();
        }
        List<Sighting> seen = new ArrayList<>();
        for (int animal = random.nextInt(3) == 0 ? 1 : 0; animal < 2; animal++) {
            seen.addAll(RandomAnimals.sightings(
                    model, genome, sex, RandomAnimals.genotype(model, sex, random.nextLong()), random.nextLong()));
        }
        if (seen.stream().allMatch(one -> one.look().traits().isEmpty())) {
            return Optional.empty();
        }
        return Optional.of(new Case(
                Answers.of(CompiledModel.of(model), List.of()),
                genome,
                new DescribeQuestion(seen, random.nextBoolean() ? Optional.of(sex) : Optional.empty())));
    }

    /** Whether some animal lives some life in which it shows some readings. */
    private static boolean lives(Case one, List<Reading> readings) {
        List<Seen> seen = new ArrayList<>();
        for (Reading reading : readings) {
            Map<String, String> look = new LinkedHashMap<>();
            look.put(reading.trait(), reading.state());
            seen.add(new Seen(RandomAnimals.plain(reading.stage()), look));
        }
        for (Sex sex : one.question().sex().map(List::of).orElse(List.of(Sex.values()))) {
            for (Map<String, String> genotype : one.genome().genotypes(sex.word())) {
                Animal animal =
                        one.genome().phases(sex.word(), genotype, Map.of()).get(0);
                if (!Life.agrees(one.genome(), animal, seen).isZero()) {
                    return true;
                }
            }
        }
        return false;
    }
}
