package org.geneticsrules.testing.brute;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;

/** The loci of a model and how they are handed down. */
public final class Genome {

    /** The two sexes. */
    public static final List<String> SEXES = List.of("female", "male");

    /**
     * Loci on one chromosome.
     *
     * @param transmission how it is handed down
     * @param loci its loci in map order
     * @param document what the model says of it; nothing for a locus in no group
     */
    record Group(String transmission, List<String> loci, Map<String, Object> document) {}

    private final Map<String, Object> model;
    private final List<Group> groups;
    private final Map<String, List<String>> alleles = new LinkedHashMap<>();
    private final Map<Object, Object> listed = new HashMap<>();

    /**
     * Reads a model.
     *
     * @param model its document
     */
    public Genome(Map<String, Object> model) {
        this.model = model;
        this.groups = read();
        for (String locus : loci()) {
            List<String> ids = new ArrayList<>();
            Plain.list(locus(locus).get("alleles")).forEach(allele -> ids.add(Plain.textOr(allele, "id")));
            alleles.put(locus, ids);
        }
    }

    /** What was listed before under the same name; the same is asked of very many animals. */
    @SuppressWarnings("unchecked")
    <T> T once(List<?> name, Supplier<T> list) {
        Object before = listed.get(name);
        if (before == null) {
            before = list.get();
            listed.put(name, before);
        }
        return (T) before;
    }

    /**
     * Leaves mutation out.
     *
     * @return the same model in which parents pass on what they have
     */
    public Genome withoutMutation() {
        Map<String, Object> loci = new LinkedHashMap<>(Plain.object(model, "loci"));
        loci.replaceAll((id, locus) -> {
            Map<String, Object> stable = new LinkedHashMap<>(Plain.members(locus));
            stable.remove("mutation");
            return stable;
        });
        Map<String, Object> stable = new LinkedHashMap<>(model);
        stable.put("loci", loci);
        return new Genome(stable);
    }

    Map<String, Object> model() {
        return model;
    }

    /**
     * Lists the loci.
     *
     * @return locus ids in declared order
     */
    public List<String> loci() {
        return new ArrayList<>(Plain.object(model, "loci").keySet());
    }

    Map<String, Object> locus(String locus) {
        return Plain.object(Plain.object(model, "loci"), locus);
    }

    /**
     * Lists the alleles of a locus.
     *
     * @param locus id of a locus
     * @return allele ids in declared order
     */
    public List<String> alleles(String locus) {
        return alleles.get(locus);
    }

    /** The groups of the model, and one for each locus that is in none. */
    List<Group> groups() {
        return groups;
    }

    private List<Group> read() {
        List<Group> groups = new ArrayList<>();
        List<String> alone = loci();
        for (Object group : Plain.object(model, "groups").values()) {
            List<String> loci = new ArrayList<>();
            Plain.list(Plain.members(group).get("loci")).forEach(locus -> loci.add((String) locus));
            String transmission = (String) Plain.members(group).getOrDefault("transmission", "autosomal");
            groups.add(new Group(transmission, loci, Plain.members(group)));
            alone.removeAll(loci);
        }
        alone.forEach(locus -> groups.add(new Group("autosomal", List.of(locus), Map.of())));
        return groups;
    }

    /**
     * Tells how a locus is handed down.
     *
     * @param locus id of a locus
     * @return the transmission of its group
     */
    public String transmission(String locus) {
        return groups().stream()
                .filter(group -> group.loci().contains(locus))
                .findFirst()
                .orElseThrow()
                .transmission();
    }

    /** Tells whether a kit of one sex has a strand from the parent of one sex. */
    static boolean passes(String transmission, String parent, String kit) {
        return switch (transmission) {
            case "autosomal" -> true;
            case "X" -> parent.equals("female") || kit.equals("female");
            case "Z" -> parent.equals("male") || kit.equals("male");
            case "Y" -> parent.equals("male") && kit.equals("male");
            case "W" -> parent.equals("female") && kit.equals("female");
            case "maternal" -> parent.equals("female");
            default -> throw new IllegalArgumentException(transmission);
        };
    }

    /**
     * Lists the genotypes of one locus.
     *
     * @param locus id of a locus
     * @param sex sex of the animal
     * @return all {@code a/b} with a declared no later than b, or each allele alone, or only the empty genotype
     */
    public List<String> pairs(String locus, String sex) {
        List<String> alleles = alleles(locus);
        boolean fromDam = passes(transmission(locus), "female", sex);
        boolean fromSire = passes(transmission(locus), "male", sex);
        List<String> pairs = new ArrayList<>();
        if (!fromDam && !fromSire) {
            pairs.add("");
        } else if (fromDam != fromSire) {
            pairs.addAll(alleles);
        } else {
            for (int i = 0; i < alleles.size(); i++) {
                for (int j = i; j < alleles.size(); j++) {
                    pairs.add(alleles.get(i) + "/" + alleles.get(j));
                }
            }
        }
        return pairs;
    }

    /**
     * Lists every genotype over all loci.
     *
     * @param sex sex of the animal
     * @return full genotypes, the last locus changing fastest
     */
    public List<Map<String, String>> genotypes(String sex) {
        List<Map<String, String>> all = List.of(new LinkedHashMap<>());
        for (String locus : loci()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> genotype : all) {
                for (String pair : pairs(locus, sex)) {
                    Map<String, String> one = new LinkedHashMap<>(genotype);
                    one.put(locus, pair);
                    longer.add(one);
                }
            }
            all = longer;
        }
        return all;
    }

    /**
     * Lists the animals of a genotype: every way in which the alleles of linked loci may lie on the two strands.
     *
     * @param sex sex of the animal
     * @param genotype a full genotype that animals of this sex may have
     * @param known what is known of the phase; loci that are not named may lie either way
     * @return animals that differ in phase, all equally likely where nothing else is known; which parent gave which strand is left open
     *     and put in one way only
     */
    public List<Animal> phases(String sex, Map<String, String> genotype, Map<String, String> known) {
        List<Map<String, String>> ones = List.of(new LinkedHashMap<>());
        for (Group group : groups()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> one : ones) {
                for (Map<String, String> strand : strands(group, genotype, known)) {
                    Map<String, String> joined = new LinkedHashMap<>(one);
                    joined.putAll(strand);
                    longer.add(joined);
                }
            }
            ones = longer;
        }
        List<Animal> animals = new ArrayList<>();
        for (Map<String, String> one : ones) {
            Map<String, String> egg = new LinkedHashMap<>();
            Map<String, String> sperm = new LinkedHashMap<>();
            for (String locus : loci()) {
                String pair = genotype.get(locus);
                if (pair.contains("/")) {
                    egg.put(locus, one.get(locus));
                    sperm.put(locus, other(pair, one.get(locus)));
                } else if (!pair.isEmpty()) {
                    (passes(transmission(locus), "female", sex) ? egg : sperm).put(locus, pair);
                }
            }
            animals.add(new Animal(sex, egg, sperm));
        }
        return animals;
    }

    /** The alleles that may lie on the one strand, the first open heterozygous locus being put in one way only. */
    private static List<Map<String, String>> strands(
            Group group, Map<String, String> genotype, Map<String, String> known) {
        List<Map<String, String>> strands = List.of(new LinkedHashMap<>());
        boolean first = true;
        for (String locus : group.loci()) {
            String pair = genotype.get(locus);
            if (!pair.contains("/")) {
                continue;
            }
            String a = pair.substring(0, pair.indexOf('/'));
            String b = other(pair, a);
            List<String> ways = a.equals(b) || first ? List.of(a) : List.of(a, b);
            first = first && a.equals(b);
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> strand : strands) {
                for (String allele : ways) {
                    Map<String, String> next = new LinkedHashMap<>(strand);
                    next.put(locus, allele);
                    longer.add(next);
                }
            }
            strands = longer;
        }
        return strands.stream().filter(strand -> agrees(strand, known)).toList();
    }

    /** Strands have no order, so what is known may hold of this strand or of its partner. */
    private static boolean agrees(Map<String, String> strand, Map<String, String> known) {
        Set<String> named = strand.keySet().stream().filter(known::containsKey).collect(Collectors.toSet());
        return named.stream().allMatch(locus -> known.get(locus).startsWith(strand.get(locus) + "|"))
                || named.stream().allMatch(locus -> known.get(locus).endsWith("|" + strand.get(locus)));
    }

    private static String other(String pair, String one) {
        int slash = pair.indexOf('/');
        String a = pair.substring(0, slash);
        String b = pair.substring(slash + 1);
        return one.equals(a) ? b : a;
    }

    /**
     * Describes an animal without its phase.
     *
     * @param animal an animal
     * @return its genotype
     */
    public Map<String, String> genotype(Animal animal) {
        Map<String, String> genotype = new LinkedHashMap<>();
        for (String locus : loci()) {
            List<String> both = new ArrayList<>();
            for (String allele : alleles(locus)) {
                for (Map<String, String> strand : List.of(animal.egg(), animal.sperm())) {
                    if (allele.equals(strand.get(locus))) {
                        both.add(allele);
                    }
                }
            }
            genotype.put(locus, String.join("/", both));
        }
        return genotype;
    }

    /**
     * Describes the phase of an animal: of each group with two heterozygous loci or more, the alleles of those loci on the one and the
     * other strand, where the one is that which has the allele declared first at the first of them.
     *
     * @param animal an animal
     * @return its phase
     */
    public Map<String, String> phase(Animal animal) {
        Map<String, String> phase = new LinkedHashMap<>();
        for (Group group : groups()) {
            List<String> open = group.loci().stream()
                    .filter(locus -> animal.egg().containsKey(locus)
                            && animal.sperm().containsKey(locus)
                            && !animal.egg().get(locus).equals(animal.sperm().get(locus)))
                    .toList();
            if (open.size() > 1) {
                List<String> declared = alleles(open.get(0));
                boolean swap = declared.indexOf(animal.egg().get(open.get(0)))
                        > declared.indexOf(animal.sperm().get(open.get(0)));
                Map<String, String> one = swap ? animal.sperm() : animal.egg();
                Map<String, String> other = swap ? animal.egg() : animal.sperm();
                open.forEach(locus -> phase.put(locus, one.get(locus) + "|" + other.get(locus)));
            }
        }
        return phase;
    }
}
