package org.geneticsrules.testing.brute;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.geneticsrules.probability.Probability;

/** The mating of two animals of whom every strand is known. */
public final class Mating {

    private final Genome genome;
    private final Animal sire;
    private final Animal dam;

    /**
     * Mates two animals.
     *
     * @param genome the model
     * @param sire the male
     * @param dam the female
     */
    public Mating(Genome genome, Animal sire, Animal dam) {
        this.genome = genome;
        this.sire = sire;
        this.dam = dam;
    }

    /**
     * Makes gametes: of each chromosome that is passed on, starts on either strand, changes strands where intervals recombine, and lets
     * alleles mutate.
     *
     * @param genome the model
     * @param parent the parent
     * @param kit sex of the kit that comes of it
     * @return the chance of the alleles passed on, by locus
     */
    public static Map<Map<String, String>, Probability> gametes(Genome genome, Animal parent, String kit) {
        return genome.once(
                List.of("gametes", parent, kit),
                () -> Choices.all(chance -> {
                    Map<String, String> gamete = new LinkedHashMap<>();
                    for (Genome.Group group : genome.groups()) {
                        if (Genome.passes(group.transmission(), parent.sex(), kit)) {
                            pass(group, parent, chance, gamete);
                        }
                    }
                    gamete.replaceAll((locus, allele) -> mutated(genome, locus, allele, chance));
                    return gamete;
                }));
    }

    private static void pass(Genome.Group group, Animal parent, Choices chance, Map<String, String> gamete) {
        String first = group.loci().get(0);
        boolean two = parent.egg().containsKey(first) && parent.sperm().containsKey(first);
        if (!two) {
            Map<String, String> only = parent.egg().containsKey(first) ? parent.egg() : parent.sperm();
            group.loci().forEach(locus -> gamete.put(locus, only.get(locus)));
            return;
        }
        boolean onEgg = chance.evenly(List.of(true, false));
        Set<Integer> recombining = recombining(group, parent.sex(), chance);
        for (int i = 0; i < group.loci().size(); i++) {
            String locus = group.loci().get(i);
            onEgg = recombining.contains(i - 1) != onEgg;
            gamete.put(locus, (onEgg ? parent.egg() : parent.sperm()).get(locus));
        }
    }

    /** Positions of the intervals that recombine: by a table of patterns, by fractions, or none where nothing is stated. */
    private static Set<Integer> recombining(Genome.Group group, String sex, Choices chance) {
        Set<Integer> recombining = new LinkedHashSet<>();
        Map<String, Object> table = Plain.object(group.document(), "crossovers");
        String pattern = table.isEmpty() ? "" : chance.among(Plain.chances(table));
        Object stated = group.document().get("recombination");
        List<Object> fractions =
                Plain.list(stated instanceof Map ? Plain.members(stated).get(sex) : stated);
        for (int i = 0; i + 1 < group.loci().size(); i++) {
            String interval = group.loci().get(i) + "-" + group.loci().get(i + 1);
            boolean recombines = fractions.isEmpty()
                    ? (" " + pattern + " ").contains(" " + interval + " ")
                    : chance.happens(Plain.chance(fractions.get(i)));
            if (recombines) {
                recombining.add(i);
            }
        }
        return recombining;
    }

    private static String mutated(Genome genome, String locus, String allele, Choices chance) {
        Map<String, Object> rates = Plain.object(Plain.object(genome.locus(locus), "mutation"), allele);
        if (rates.isEmpty()) {
            return allele;
        }
        Map<String, Probability> outcomes = new LinkedHashMap<>();
        rates.forEach((to, rate) -> outcomes.put(
                to, Plain.chance(rate instanceof Map ? Plain.members(rate).get("rate") : rate)));
        outcomes.put(
                allele,
                outcomes.values().stream()
                        .reduce(Probability.ZERO, Probability::plus)
                        .complement());
        return chance.among(outcomes);
    }

    /**
     * Lists the kits that are conceived, half of them of each sex.
     *
     * @return the chance of each kit
     */
    public Map<Animal, Probability> conceived() {
        return genome.once(List.of("conceived", sire, dam), this::unions);
    }

    private Map<Animal, Probability> unions() {
        Map<Animal, Probability> kits = new LinkedHashMap<>();
        for (String sex : Genome.SEXES) {
            Map<Map<String, String>, Probability> eggs = gametes(genome, dam, sex);
            Map<Map<String, String>, Probability> sperms = gametes(genome, sire, sex);
            eggs.forEach((egg, p) -> sperms.forEach((sperm, q) -> kits.merge(
                    new Animal(sex, egg, sperm), p.times(q).times(Probability.of(1, 2)), Probability::plus)));
        }
        return kits;
    }

    /**
     * Tells how likely an animal is to get as far as a step.
     *
     * @param genome the model
     * @param animal an animal that is conceived
     * @param step {@code conceived}, {@code born} or {@code scored}
     * @return the chance
     */
    public static Probability viability(Genome genome, Animal animal, String step) {
        return genome.once(List.of("viability", animal, step), () -> lives(genome, animal, step));
    }

    private static Probability lives(Genome genome, Animal animal, String step) {
        Probability chance = Probability.ONE;
        for (Object one : Plain.object(genome.model(), "viability").values()) {
            Map<String, Object> statement = Plain.members(one);
            String locus = (String) statement.get("locus");
            String shown =
                    Life.expression(genome, locus, genome.genotype(animal).get(locus), animal.sex());
            boolean meant = Plain.list(statement.get("expressions")).contains(shown)
                    && statement.getOrDefault("sex", animal.sex()).equals(animal.sex());
            if (meant && !step.equals("conceived")) {
                chance = chance.times(Plain.chance(statement.getOrDefault("birth", "1")));
            }
            if (meant && step.equals("scored")) {
                chance = chance.times(Plain.chance(statement.getOrDefault("scored", "1")));
            }
        }
        return chance;
    }

    /**
     * Tells how many of the kits conceived get as far as a step.
     *
     * @param step {@code conceived}, {@code born} or {@code scored}
     * @return their share; the rest is lost
     */
    public Probability share(String step) {
        Probability share = Probability.ZERO;
        for (Map.Entry<Animal, Probability> kit : conceived().entrySet()) {
            share = share.plus(kit.getValue().times(viability(genome, kit.getKey(), step)));
        }
        return share;
    }

    /**
     * Lists the kits that get as far as a step.
     *
     * @param step {@code conceived}, {@code born} or {@code scored}
     * @return the chance of each kit, given that it gets so far; nothing if none does
     */
    public Map<Animal, Probability> kits(String step) {
        Map<Animal, Probability> kits = new LinkedHashMap<>();
        conceived().forEach((kit, chance) -> kits.put(kit, chance.times(viability(genome, kit, step))));
        return Founders.normalised(kits);
    }
}
