package org.geneticsrules.pedigree;

import java.math.BigInteger;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SplittableRandom;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.vocabulary.PartialDate;

/** Small pedigrees at random: loops, parents not recorded, candidate sires of both kinds, litters of several kits. */
public final class RandomPedigree {

    /** Beginnings of ids that spreadsheets or tables could mistake for something else. */
    private static final List<String> BEGINNINGS =
            List.of("i", "=", "+", "'", "''", "-", "@", "00", "a,b ", "\"q\" ", "1/", "Größe ", "1e", "a;", "~/");

    private final SplittableRandom random;

    /** Its own, so that what else is drawn stays what it was. */
    private final SplittableRandom noticed;

    private final List<Individual> females = new ArrayList<>();
    private final List<Individual> males = new ArrayList<>();
    private final List<Individual> all = new ArrayList<>();
    private final List<Litter> litters = new ArrayList<>();
    private final boolean dated;
    private final boolean recorded;
    private boolean candidates = true;
    private int births;

    private RandomPedigree(long seed, boolean recorded) {
        this.random = new SplittableRandom(seed);
        this.noticed = new SplittableRandom(seed + 1);
        this.dated = random.nextInt(3) > 0;
        this.recorded = recorded;
    }

    /** At most so many individuals of whom nothing but ancestry is recorded. */
    static Pedigree bare(long seed, int individuals) {
        return new RandomPedigree(seed, false).grow(individuals);
    }

    /** At most so many individuals, all sires certain or unknown. */
    static Pedigree certain(long seed, int individuals) {
        RandomPedigree pedigree = new RandomPedigree(seed, false);
        pedigree.candidates = false;
        return pedigree.grow(individuals);
    }

    /**
     * Returns a pedigree with records of all kinds.
     *
     * @param seed where to begin
     * @param individuals at most so many
     * @return the pedigree
     */
    public static Pedigree recorded(long seed, int individuals) {
        return new RandomPedigree(seed, true).grow(individuals);
    }

    private Pedigree grow(int individuals) {
        while (all.size() < individuals) {
            if (females.isEmpty() || males.isEmpty() || random.nextInt(5) == 0) {
                add(individual());
            } else {
                litter(Math.min(individuals - all.size(), 1 + random.nextInt(3)));
            }
        }
        PedigreeBuilder builder = Pedigree.builder("random", "1");
        all.forEach(builder::add);
        litters.forEach(builder::add);
        return builder.build();
    }

    private LocalDate today() {
        return LocalDate.of(2000, 1, 1).plusDays(births++);
    }

    private Individual individual() {
        Individual one = Individual.of((recorded ? any(BEGINNINGS) : "i") + all.size());
        int sex = random.nextInt(recorded ? 9 : 2);
        if (sex < 8) {
            one = one.with(sex % 2 == 0 ? Sex.FEMALE : Sex.MALE);
        }
        if (dated && random.nextInt(4) > 0) {
            one = one.bornOn(today());
        }
        return recorded ? records(one) : one;
    }

    private void add(Individual one) {
        all.add(one);
        one.sex().ifPresent(sex -> (sex == Sex.FEMALE ? females : males).add(one));
    }

    private void litter(int kits) {
        Optional<String> dam = random.nextInt(8) == 0
                ? Optional.empty()
                : Optional.of(any(females).id());
        Paternity sires = sires();
        List<Individual> young = new ArrayList<>();
        for (int i = 0; i < kits; i++) {
            Individual one = individual();
            young.add(one.born().isPresent() ? one.bornOn(today().minusDays(1)) : one);
            add(young.get(i));
        }
        boolean days = dated && young.stream().allMatch(one -> one.born().isPresent());
        int scored = kits + random.nextInt(3);
        litters.add(new Litter(
                (recorded ? any(BEGINNINGS) : "L") + litters.size(),
                dam,
                sires,
                days ? young.get(0).born() : Optional.empty(),
                recorded && random.nextBoolean() ? OptionalInt.of(scored + random.nextInt(3)) : OptionalInt.empty(),
                recorded && random.nextBoolean() ? OptionalInt.of(scored) : OptionalInt.empty(),
                foster(dam),
                young.stream().map(Individual::id).toList(),
                recorded ? ascertainment(kits) : Ascertainment.unknown()));
        births += 10;
    }

    private Ascertainment ascertainment(int kits) {
        Sighting sign = Sighting.of(Phenotype.parse(
                noticed.nextBoolean() ? "hue: none" : noticed.nextBoolean() ? "1: 2" : "eye: pink, 7: b"));
        if (noticed.nextInt(3) == 0) {
            LifeStage stage = noticed.nextBoolean() ? LifeStage.atWeek(noticed.nextInt(60)) : LifeStage.atMoult(2);
            sign = new Sighting(noticed.nextBoolean() ? stage.in("winter") : stage, sign.look());
        }
        sign = noticed.nextInt(3) == 0 ? sign.in("lamplight") : sign;
        return switch (noticed.nextInt(6)) {
            case 0 -> Ascertainment.complete();
            case 1 -> new Ascertainment.AtLeastOne(sign);
            case 2 ->
                new Ascertainment.Probands(
                        sign,
                        Probability.of(1, 1 + noticed.nextInt(50)),
                        noticed.nextBoolean() ? OptionalInt.of(1 + noticed.nextInt(kits)) : OptionalInt.empty());
            case 3 -> new Ascertainment.ParentsChosen(sign);
            default -> Ascertainment.unknown();
        };
    }

    /** The first of all, who is older than any litter, if she is a female and not the dam. */
    private Optional<String> foster(Optional<String> dam) {
        Individual first = all.get(0);
        return Optional.of(first.id())
                .filter(id -> recorded && random.nextInt(4) == 0)
                .filter(id -> first.sex().equals(Optional.of(Sex.FEMALE)) && !dam.equals(Optional.of(id)));
    }

    private Paternity sires() {
        int kind = random.nextInt(10);
        if (kind == 0) {
            return Paternity.unknown();
        }
        if (kind > 4 || !candidates) {
            return Paternity.of(any(males).id());
        }
        List<Paternity.Candidate> several = new ArrayList<>();
        int most = 1 + random.nextInt(3);
        List<Integer> weights = new ArrayList<>();
        List<Individual> chosen = new ArrayList<>();
        for (int i = 0; i < most; i++) {
            Individual male = any(males);
            if (!chosen.contains(male)) {
                chosen.add(male);
                weights.add(1 + random.nextInt(3));
            }
        }
        boolean stranger = random.nextInt(3) == 0;
        if (stranger) {
            weights.add(1);
        }
        int total = weights.stream().mapToInt(Integer::intValue).sum();
        for (int i = 0; i < weights.size(); i++) {
            Probability share = Probability.of(BigInteger.valueOf(weights.get(i)), BigInteger.valueOf(total));
            several.add(
                    i < chosen.size()
                            ? Paternity.Candidate.of(chosen.get(i).id(), share)
                            : new Paternity.Candidate(
                                    Optional.empty(),
                                    random.nextBoolean() ? Optional.of("wild") : Optional.empty(),
                                    share));
        }
        return new Paternity.Candidates(several, random.nextBoolean());
    }

    private <T> T any(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }

    private Individual records(Individual bare) {
        Individual one = random.nextInt(4) == 0 ? bare.from(any(List.of("wild", "farm"))) : bare;
        for (int i = random.nextInt(3); i > 0; i--) {
            one = one.with(observation(one));
        }
        for (int i = random.nextInt(4) / 2; i > 0; i--) {
            one = one.with(name(one));
        }
        if (random.nextInt(3) == 0) {
            one = one.with(new GenotypeTest(
                    day(one),
                    any(List.of("B", "C")),
                    random.nextBoolean() ? Set.of("C/c") : new LinkedHashSet<>(List.of("c/c", "C/-")),
                    random.nextBoolean() ? Probability.ZERO : Probability.of(1, 3 + random.nextInt(50))));
        }
        if (random.nextInt(4) == 0) {
            one = one.with(new HearingTest(day(one), any(List.of(Hearing.values())), any(List.of(Hearing.values()))));
        }
        if (random.nextInt(3) == 0) {
            Fertility status = any(List.of(Fertility.values()));
            one = status == Fertility.VASECTOMISED && !one.sex().equals(Optional.of(Sex.MALE)) ? one : one.with(status);
        }
        return one;
    }

    private CalledName name(Individual one) {
        CalledName name =
                CalledName.of(any(List.of("sable", "Dark-eyed white", "=A1")), any(List.of("The North", "a.b")));
        name = random.nextBoolean() ? name.ofFacet("colour") : name;
        Optional<LocalDate> day = day(one);
        if (day.isPresent()) {
            PartialDate known = switch (random.nextInt(3)) {
                case 0 -> PartialDate.of(day.get().getYear());
                case 1 -> PartialDate.of(day.get().getYear(), day.get().getMonthValue());
                default -> PartialDate.of(day.get());
            };
            name = name.on(known);
        }
        name = random.nextBoolean()
                ? name.at(LifeStage.atMoult(random.nextInt(6)).in("winter"))
                : name;
        name = random.nextInt(3) == 0 ? name.in("dusk") : name;
        return random.nextInt(3) == 0 ? name.by("A. Keeper") : name;
    }

    private Optional<LocalDate> day(Individual one) {
        return random.nextBoolean() ? one.born().map(born -> born.plusDays(random.nextInt(900))) : Optional.empty();
    }

    private Observation observation(Individual one) {
        LifeStage stage = switch (random.nextInt(4)) {
            case 0 -> LifeStage.unstated();
            case 1 -> LifeStage.atWeek(random.nextInt(60));
            case 2 -> LifeStage.atMoult(random.nextInt(6)).in("winter");
            default -> LifeStage.unstated().in("summer");
        };
        Set<Phenotype> looks = new LinkedHashSet<>();
        for (int i = 1 + random.nextInt(2); i > 0; i--) {
            looks.add(Phenotype.parse(
                    "hue: " + any(List.of("black", "brown", "none")) + ", eye: " + any(List.of("black", "pink"))));
        }
        Observation seen = new Observation(day(one), stage, looks);
        seen = random.nextInt(3) == 0 ? seen.in(any(List.of("daylight", "lamplight"))) : seen;
        return random.nextInt(3) == 0 ? seen.by(any(List.of("A. Keeper", "=B"))) : seen;
    }
}
