package org.geneticsrules.testing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Phase;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Seen;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** Animals of random models: what they are, when they are looked at and what they show, each with its plain form. */
public final class RandomAnimals {

    /** Looks are listed at these counts of moults and weeks at most, since every path up to there is listed. */
    private static final int LATEST = 2;

    private RandomAnimals() {}

    /**
     * What is known of a parent.
     *
     * @param set genotypes it may have
     * @param members those of its sex, written out
     */
    public record Parents(GenotypeSet set, List<Map<String, String>> members) {}

    // ---- genotypes
    // ------------------------------------------------------------------------------------------------------------

    /**
     * Draws a genotype that covers every locus.
     *
     * @param model a model
     * @param sex sex of the animal
     * @param seed any number
     * @return heterozygous at every locus where that can be, for half of the seeds; else each pair equally likely at each locus. Of
     *     linked loci the phase is known fully, partly or not at all
     */
    public static Genotype genotype(Model model, Sex sex, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<AllelePair> chosen = new ArrayList<>();
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        int known = random.nextInt(3);
        boolean open = random.nextBoolean();
        for (Locus locus : model.loci().values()) {
            List<AllelePair> pairs = locus.pairs(sex);
            List<AllelePair> mixed =
                    pairs.stream().filter(AllelePair::isHeterozygous).toList();
            AllelePair pair = RandomLocus.pick(random, open && !mixed.isEmpty() ? mixed : pairs);
            chosen.add(pair);
            if (pair.isHeterozygous() && (known == 0 || (known == 1 && random.nextInt(3) > 0))) {
                Allele one = pair.alleles().get(0);
                Allele other = pair.alleles().get(1);
                strands.put(
                        locus.id(),
                        random.nextBoolean() ? new Phase.Strands(one, other) : new Phase.Strands(other, one));
            }
        }
        return Genotype.of(model, chosen, Phase.of(model, strands));
    }

    /**
     * Lists the animals that a genotype may be of.
     *
     * @param genome the model, for the reference
     * @param sex sex of the animal
     * @param genotype a genotype that covers every locus
     * @return animals that differ in phase, equally likely
     */
    public static List<Animal> animals(Genome genome, Sex sex, Genotype genotype) {
        return genome.phases(sex.word(), RandomModels.plain(genotype), plain(genotype.phase()));
    }

    /**
     * Returns the genotype of an animal, its phase being known.
     *
     * @param model a model
     * @param genome the same model, for the reference
     * @param animal an animal
     * @return its genotype
     */
    public static Genotype genotype(Model model, Genome genome, Animal animal) {
        Genotype unphased = RandomModels.genotype(model, genome.genotype(animal));
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        genome.phase(animal).forEach((locus, both) -> {
            Map<String, Allele> alleles = model.locus(locus).alleles();
            int bar = both.indexOf('|');
            strands.put(
                    locus,
                    new Phase.Strands(alleles.get(both.substring(0, bar)), alleles.get(both.substring(bar + 1))));
        });
        return Genotype.of(model, unphased.pairs().values(), Phase.of(model, strands));
    }

    /**
     * Writes a phase as the reference does.
     *
     * @param phase a phase
     * @return {@code a|b} by locus, by allele ids
     */
    public static Map<String, String> plain(Phase phase) {
        Map<String, String> plain = new LinkedHashMap<>();
        phase.strands()
                .forEach((locus, both) ->
                        plain.put(locus, both.one().id() + "|" + both.other().id()));
        return plain;
    }

    /**
     * Draws what is known of a parent: one random genotype or two, each blurred at some loci.
     *
     * @param model a model
     * @param genome the same model, for the reference
     * @param sex sex of the parent
     * @param most the largest number of members of this sex
     * @param seed any number
     * @return the set
     */
    public static Parents parents(Model model, Genome genome, Sex sex, int most, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        GenotypeSet set = null;
        Set<Map<String, String>> members = new LinkedHashSet<>();
        int boxes = random.nextInt(1, 3);
        for (int box = 0; box < boxes; box++) {
            Genotype genotype = genotype(model, sex, random.nextLong());
            GenotypeSet about = GenotypeSet.all(model);
            List<Map<String, String>> meant = genome.genotypes(sex.word());
            List<String> loci = new ArrayList<>(model.loci().keySet());
            while (!loci.isEmpty()) {
                // What is kept narrows the set down, until it is small enough.
                String locus = loci.remove(random.nextInt(loci.size()));
                if (random.nextInt(3) > 0 || members.size() + meant.size() > most) {
                    AllelePair pair = genotype.pair(locus).orElseThrow();
                    about = about.where(locus, List.of(pair));
                    meant.removeIf(other -> !other.get(locus).equals(plain(pair)));
                }
            }
            if (set == null || members.size() + meant.size() <= most) {
                set = set == null ? about : set.or(about);
                members.addAll(meant);
            }
        }
        return new Parents(set, new ArrayList<>(members));
    }

    private static String plain(AllelePair pair) {
        return String.join("/", pair.alleles().stream().map(Allele::id).toList());
    }

    // ---- stages and sightings
    // --------------------------------------------------------------------------------------------------

    /**
     * Draws a stage that states everything a model may ask for.
     *
     * @param model a model
     * @param seed any number
     * @return weeks and moults from 0 to 2, and a season where the catalogue lists any
     */
    public static LifeStage stage(Model model, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<String> seasons = model.catalogue().seasons();
        return new LifeStage(
                OptionalInt.of(random.nextInt(LATEST + 1)),
                OptionalInt.of(random.nextInt(LATEST + 1)),
                seasons.isEmpty() ? Optional.empty() : Optional.of(RandomLocus.pick(random, seasons)));
    }

    /**
     * Writes a stage as the reference does.
     *
     * @param stage a stage
     * @return what is known of {@code week}, {@code moult} and {@code season}
     */
    public static Map<String, String> plain(LifeStage stage) {
        Map<String, String> plain = new LinkedHashMap<>();
        stage.weeks().ifPresent(weeks -> plain.put("week", Integer.toString(weeks)));
        stage.moult().ifPresent(moult -> plain.put("moult", Integer.toString(moult)));
        stage.season().ifPresent(season -> plain.put("season", season));
        return plain;
    }

    /**
     * Draws what was seen of an animal that has some genotype: one look or two of the same life, in some of the visible traits.
     *
     * @param model a model
     * @param genome the same model, for the reference
     * @param sex sex of the animal
     * @param genotype its genotype, which covers every locus
     * @param seed any number
     * @return sightings that are possible
     */
    public static List<Sighting> sightings(Model model, Genome genome, Sex sex, Genotype genotype, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<LifeStage> stages = new ArrayList<>();
        int count = random.nextInt(1, 3);
        for (int i = 0; i < count; i++) {
            stages.add(stage(model, random.nextLong()));
        }
        List<String> traits = new ArrayList<>(model.visibleTraits());
        List<List<Map<String, String>>> histories = new ArrayList<>(Life.histories(
                        genome,
                        animals(genome, sex, genotype).get(0),
                        stages.stream().map(RandomAnimals::plain).toList(),
                        traits)
                .keySet());
        List<Map<String, String>> looks = RandomLocus.pick(random, histories);
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Map<String, String> look = new LinkedHashMap<>(looks.get(i));
            look.keySet().removeIf(trait -> random.nextInt(3) == 0);
            sightings.add(new Sighting(stages.get(i), Phenotype.from(look)));
        }
        return sightings;
    }

    /**
     * Writes sightings as the reference does.
     *
     * @param sightings what was seen
     * @return their plain form
     */
    public static List<Seen> plain(List<Sighting> sightings) {
        return sightings.stream()
                .map(seen -> new Seen(plain(seen.stage()), seen.look().asMap()))
                .toList();
    }
}
