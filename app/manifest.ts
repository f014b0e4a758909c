import type { MetadataRoute } from 'next';

export const dynamic = 'force-static';

export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Leeward', short_name: 'Leeward', start_url: '/', display: 'standalone', background_color: '#FBFCFC', theme_color: '#FBFCFC',
    description: 'Finds out why a filament print failed, by reasoning and measuring.',
    icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' }],
  };
}
