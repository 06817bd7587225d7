package org.geneticsrules.simulation;

import java.util.Optional;
import java.util.function.Supplier;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.trait.Sex;

/** One row of draws: where its chance comes from, and what it has worked out so far. Of use to one thread. */
final class Drawing {

    final Genome genome;
    final Meiosis meiosis;
    final Selection selection;
    final Chance chance;
    private final Lives lives;
    private final Recorder recorder;
    private final long most;

    Drawing(
            Genome genome,
            Meiosis meiosis,
            Lives lives,
            Recorder recorder,
            Selection selection,
            Chance chance,
            long most) {
        this.genome = genome;
        this.meiosis = meiosis;
        this.lives = lives;
        this.recorder = recorder;
        this.selection = selection;
        this.chance = chance;
        this.most = most;
    }

    /** Lets a kit live and be looked at. */
    DrawnAnimal live(Optional<String> id, Sex sex, short[] strands) {
        return live(id, sex, strands, false);
    }

    /** Lets an animal live and be looked at. */
    DrawnAnimal live(Optional<String> id, Sex sex, short[] strands, boolean founder) {
        Lives.Life life = lives.draw(strands, sex, chance);
        return new DrawnAnimal(
                genome,
                id,
                sex,
                strands,
                lives,
                life,
                recorder.notes(life, founder, chance),
                recorder.tests(strands, sex, founder, chance));
    }

    DrawnAnimal founder(Optional<String> id, Sex sex, FounderDraw founder) {
        return founder(id, () -> sex, founder);
    }

    /** Draws a founder whose sex is drawn too, anew with all else: what it was recorded with may say something of its sex. */
    DrawnAnimal founder(Optional<String> id, Supplier<Sex> sexes, FounderDraw founder) {
        for (long tries = 0; tries < most; tries++) {
            Sex sex = sexes.get();
            DrawnAnimal drawn = live(id, sex, founder.draw(sex, chance), true);
            if (founder.isLike(drawn)) {
                return drawn;
            }
        }
        throw new TooRareException(
                "no founder that is recorded with " + founder + " came up",
                most,
                "state more of its genotype, or a population where such animals are not so rare.");
    }

    Conception conception() {
        return new Conception(genome, meiosis, chance);
    }

    /** Draws sizes of litters. */
    Sizes sizes(LitterSize size) {
        return new Sizes(size);
    }

    final class Sizes {
        private final int[] numbers;
        private final double[] sums;

        Sizes(LitterSize size) {
            numbers = size.kits().outcomes().stream().mapToInt(number -> number).toArray();
            sums = Chance.sums(size.kits().outcomes().stream()
                    .mapToDouble(number -> size.kits().probability(number).toDouble())
                    .toArray());
        }

        int next() {
            return numbers[numbers.length == 1 ? 0 : chance.among(sums)];
        }
    }
}
